package progress_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/course"
	"scratchpass/lessons/mastery"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// The progress page names the command that tells more, as soon as something is begun; a
// task that was shown on one day comes back within three days, whatever its card says.
func TestProgressOfARecord(t *testing.T) {
	r, err := record.Open(filepath.Join(t.TempDir(), "r.db"), "Ada")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	items := schedule.Catalogue(machine.Imperial)
	byHand := slices.IndexFunc(items, func(it schedule.Item) bool { return it.Task == "single-depth" })
	items[byHand] = schedule.Item{Task: "single-depth", Stage: items[byHand].Stage} // no problem need be made
	fold := schedule.Fold(items)
	keep := func(task string, at time.Time) {
		t.Helper()
		if err := r.Append(record.Answer{At: at, Task: task, Verdict: answer.Right}, fold); err != nil {
			t.Fatal(err)
		}
	}
	page := func() string {
		p, err := progress.Of(r, items, nil, now)
		if err != nil {
			t.Fatal(err)
		}
		return printed(t, p.Page(speaker(t), course.Plan{}, now))
	}
	how := "scratchpass progress why"
	if got := page(); strings.Contains(got, how) {
		t.Errorf("nothing was begun:\n%s", got)
	}
	for i := range 3 {
		for range 7 { // others come between
			keep("no-longer-there", now.Add(time.Duration(i)*time.Hour-200*time.Hour))
		}
		keep("single-depth", now.Add(time.Duration(i)*time.Hour-200*time.Hour).Add(time.Minute))
	}
	for i := range 6 { // right on more days makes the card wait longer
		keep("single-depth", now.Add(time.Duration(i)*24*time.Hour-150*time.Hour))
	}
	if got := page(); strings.Contains(got, how) {
		t.Errorf("what was begun is shown:\n%s", got)
	}
	keep("pitch-from-tpi", now.Add(-time.Hour))
	if got := page(); !strings.Contains(got, how) {
		t.Errorf("something is begun:\n%s", got)
	}
	of, _, err := r.Summaries()
	if err != nil {
		t.Fatal(err)
	}
	s := of["single-depth"]
	if !s.Held || !schedule.DueAt(s).Equal(s.Card.Due) {
		t.Errorf("held: its card tells when it is due; %+v", s)
	}
	s.Held, s.Wrong = false, mastery.MomentOf(now)
	if got := schedule.DueAt(s); !got.Equal(now.Add(72 * time.Hour)) {
		t.Errorf("wrong now, due at %v", got)
	}
}

// What is not held is listed on the page that says what stands between someone and asking.
func TestReadinessPageListsWhatIsNotHeld(t *testing.T) {
	r := schedule.Readiness{NotHeld: []string{"single-depth", "pitch-from-tpi"}}
	got := printed(t, progress.Ready{Readiness: r, Learner: "Ada", Answers: 9, Date: now}.Whole(speaker(t)))
	if !strings.Contains(got, "Shown, and not yet right again on a later day, or wrong since (2):") || !strings.Contains(got, "Single depth by the book; ") {
		t.Error(got)
	}
}
