package tasks_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"scratchpass/content"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

func ownLibrary(t *testing.T, names ...string) *content.Library {
	t.Helper()
	text, err := content.ExampleQuestion("number")
	if err != nil {
		t.Fatal(err)
	}
	fsys := fstest.MapFS{}
	for _, name := range names {
		fsys["questions/"+name+".yaml"] = &fstest.MapFile{Data: text}
	}
	return content.Reading("mine", fsys)
}

// A set has what ships, and behind that the questions of a library; what ships alone is as it
// was.
func TestSetOfALibrary(t *testing.T) {
	of, err := tasks.Of(ownLibrary(t, "b-question", "a-question"))
	if err != nil {
		t.Fatal(err)
	}
	shipped := tasks.Names()
	if want := append(slices.Clone(shipped), "a-question", "b-question"); !slices.Equal(of.Names(), want) {
		t.Errorf("%d names, want %d", len(of.Names()), len(want))
	}
	if own := of.OfStage(problem.Own); len(own) != 2 || own[0].Mark == "" || own[0].Stage != problem.Own {
		t.Errorf("own: %v", own)
	}
	if slices.Contains(problem.Stages, problem.Own) {
		t.Error("an instructor's own questions are no stage of a job")
	}
	p, err := of.FromCode("a-question@1-7f3a")
	if err != nil || p.Code.String() != "a-question@1-7f3a" {
		t.Errorf("%v", err)
	}
	if _, err := (tasks.Set{}).FromCode("a-question@1-7f3a"); !errors.Is(err, tasks.ErrNoTask) || !strings.Contains(err.Error(), "--content DIR") {
		t.Errorf("without its folder: %v", err)
	}
	for _, task := range tasks.All() {
		if task.Mark != "" || task.Stage == problem.Own {
			t.Errorf("%s ships, and is marked as an instructor's own", task.Name)
		}
	}
}

// A name that means something else is refused, by the check as well.
func TestNamesOfOwnQuestions(t *testing.T) {
	for name, want := range map[string]string{"single-depth": "means something else", "ask": "means something else", "own": "means something else", "setup": "means something else", "Big_One": "small letters"} {
		lib := ownLibrary(t, name)
		if _, err := tasks.Of(lib); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "mine/questions/"+name+".yaml") {
			t.Errorf("%s: %v", name, err)
		}
		if found := tasks.CheckOwn(lib); len(found) == 0 || !strings.Contains(found.Error(), want) {
			t.Errorf("the check of %s: %v", name, found)
		}
	}
	if found := tasks.CheckOwn(ownLibrary(t, "fine")); len(found) > 0 {
		t.Error(found)
	}
}
