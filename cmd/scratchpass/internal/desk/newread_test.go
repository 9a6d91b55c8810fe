package desk

import (
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// A set's name is made of its title, and always one that a blueprint takes.
func TestSetNameOfATitle(t *testing.T) {
	for title, want := range map[string]string{
		"Week 3: dials": "week-3-dials", "  --  ": "", "Übung": "bung", "a": "a", strings.Repeat("ab ", 20): strings.Trim(strings.Repeat("ab-", 14)[:40], "-"),
	} {
		if got := setNameOf(title); got != want {
			t.Errorf("%q: %q, want %q", title, got, want)
		}
	}
}

// Questions are spread over the whole of a long list.
func TestSpread(t *testing.T) {
	all := []string{"a", "b", "c", "d", "e"}
	for count, want := range map[int]string{1: "a", 2: "ac", 3: "abd", 5: "abcde", 9: "abcde"} {
		if got := strings.Join(spread(all, count), ""); got != want {
			t.Errorf("%d: %s, want %s", count, got, want)
		}
	}
}

// What is asked may be tasks, stages and lessons, each task once, and only what is set in
// the units.
func TestTasksOfANewSet(t *testing.T) {
	n := &newSet{lib: content.Shipped(), system: machine.Metric}
	lesson := n.lib.LessonNames()[0]
	for text, want := range map[string]string{
		"": "give tasks, stages or lessons", "single-depth, ": "give tasks, stages or lessons", "single-dept": "did you mean single-depth", "inch-designation": "is not set in mm",
		"single-depth, single-depth": "", "reading": "", lesson: "",
	} {
		names, err := n.tasks(text)
		if want == "" && (err != nil || len(names) == 0 || slices.Contains(names, "inch-designation")) {
			t.Errorf("%q: %q, %v", text, names, err)
		}
		if want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	if names, _ := n.tasks("single-depth, single-depth"); len(names) != 1 {
		t.Errorf("%q", names)
	}
}
