package course

import (
	"path/filepath"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// Every lesson from beginning to end, as a learner sees it who is mostly right. Read what
// changed before committing a new golden. The replies are kept beside the transcript: the
// program's own tests pipe them in.
func TestLessonTranscripts(t *testing.T) {
	for _, name := range content.Shipped().LessonNames() {
		for _, system := range []machine.System{machine.Imperial, machine.Metric} {
			t.Run(name+" "+system.String(), func(t *testing.T) {
				l := scripted.NewLearner(t, 5, system, scripted.Varied)
				answers, err := l.Session.Run(Lesson{Lesson: name})
				if err != nil {
					t.Fatal(err)
				}
				if n := len(answers); n < 12 {
					t.Errorf("only %d problems were answered", n)
				}
				base := filepath.Join("testdata", name+"-"+system.String())
				scripted.Golden(t, base+".transcript", l.Log.String())
				scripted.Golden(t, base+".replies", strings.Join(l.Replies, "\n")+"\n")
			})
		}
	}
}

// fading is the part of a lesson that takes help away, as a flow of its own.
type fading struct{ task string }

func (fading) Name() string                        { return "fading" }
func (fading) Farewell(st *sitting.Sitting) string { return st.Stopped() }
func (f fading) Run(st *sitting.Sitting) error {
	_, err := run{Sitting: st}.examplesAndFading(f.task, problem.DeriveFirst)
	return err
}

// One right answer takes a step of help away, two wrong ones bring it back.
func TestFadingGoesForwardAndBack(t *testing.T) {
	blanksAfter := func(strategy func(l *scripted.Learner) string) string {
		l := scripted.NewLearner(t, 3, machine.Imperial, strategy)
		if _, err := l.Session.Run(fading{"rule-of-thumb"}); err != nil {
			t.Fatal(err)
		}
		var blanks []string
		for _, p := range l.Shown {
			if where, ok := p[0].(page.Where); ok && strings.HasPrefix(where.Text, "Steps left for you: ") {
				blanks = append(blanks, strings.Fields(where.Text)[4])
			}
		}
		return strings.Join(blanks, " ")
	}
	if got := blanksAfter((*scripted.Learner).Key); got != "1. 2." {
		t.Error("always right:", got)
	}
	if got := blanksAfter(func(*scripted.Learner) string { return "0.9" }); got != "1. 1. 1. 1. 1. 1." {
		t.Error("always wrong:", got)
	}
	n := 0
	if got := blanksAfter(func(l *scripted.Learner) string {
		if n++; n == 1 || n > 3 {
			return l.Key()
		}
		return "0.9"
	}); got != "1. 2. 2. 1. 2." {
		t.Error("right, wrong, wrong, right, right:", got)
	}
}

// Who knows the lesson's tasks already may skip the worked examples.
func TestPreCheckSkipsExamples(t *testing.T) {
	examples := func(strategy func(l *scripted.Learner) string) int {
		l := scripted.NewLearner(t, 8, machine.Imperial, strategy)
		if _, err := l.Session.Run(Lesson{Lesson: "dial-book"}); err != nil {
			t.Fatal(err)
		}
		return strings.Count(l.Log.String(), "Worked example")
	}
	if n := examples((*scripted.Learner).Key); n != 0 {
		t.Errorf("%d worked examples for someone who knows", n)
	}
	if n := examples(func(*scripted.Learner) string { return "0.9" }); n < 8 {
		t.Errorf("%d worked examples for someone who does not, want at least two a part", n)
	}
}

// Special lessons are those that a first thread does not need, and what they alone bring
// does not count for asking.
func TestSpecial(t *testing.T) {
	special := Special(content.Shipped())
	for task, want := range map[string]bool{"acme-compound-angle": true, "next-start": true, "left-hand-start": true, "compound-travel": false, "go-and-not-go": false, "pitch-from-tpi": false} {
		if special[task] != want {
			t.Errorf("%s: special %v", task, special[task])
		}
	}
}
