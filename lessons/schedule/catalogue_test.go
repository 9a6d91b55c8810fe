package schedule_test

import (
	"path/filepath"
	"testing"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

func TestCatalogueHoldsEveryTask(t *testing.T) {
	all := schedule.Catalogue(machine.Metric)
	for i, task := range tasks.All() {
		if i >= len(all) || all[i].Task != task.Name {
			t.Fatalf("%s is not the %d. of %d items", task.Name, i+1, len(all))
		}
	}
}

// A record from before there were summaries gets them when it is used, with the rules of
// the tasks; one that has them keeps them.
func TestBookOfAnOldRecord(t *testing.T) {
	r, err := record.Open(filepath.Join(t.TempDir(), "r.db"), "Ada")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	old := record.Answer{At: at(0, 9, 0), Task: "single-depth", Code: "single-depth@1-7f3a", Verdict: answer.Right}
	if err := r.Append(old, nil); err != nil { // without a summary
		t.Fatal(err)
	}
	b, err := schedule.NewBook(r, machine.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	of, n, err := r.Summaries()
	if s := of["single-depth"]; n != 1 || err != nil || s.Run.Length != 1 || len(s.Run.Chances) == 0 {
		t.Fatalf("%+v, %d, %v", s, n, err)
	}
	next := old
	next.At, next.Verdict = at(0, 9, 1), answer.Wrong
	if err := b.Keep(next); err != nil {
		t.Fatal(err)
	}
	if err := r.Append(next, nil); err != nil { // counted only if the summaries were made anew
		t.Fatal(err)
	}
	if _, err := schedule.NewBook(r, machine.Imperial); err != nil {
		t.Fatal(err)
	}
	if of, n, err := r.Summaries(); n != 2 || of["single-depth"].Answers != 2 || of["single-depth"].Right != 1 || err != nil {
		t.Errorf("%+v, %d, %v", of["single-depth"], n, err)
	}
	r.Close()
	if _, err := schedule.NewBook(r, machine.Imperial); err == nil {
		t.Error("the book of a record that can't be read")
	}
}
