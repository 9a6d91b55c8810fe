package course

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
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

// Who is right at the first problem of a part is spared the second worked example; who
// was right before the lesson began is spared both. A decision is asked whole at once.
func TestBeingRightShortensTheExamples(t *testing.T) {
	once := func(replies ...string) func(l *scripted.Learner) string {
		n := 0
		return func(l *scripted.Learner) string {
			if n++; n <= len(replies) && replies[n-1] != "key" {
				return replies[n-1]
			}
			return l.Key()
		}
	}
	for name, c := range map[string]struct {
		task     string
		known    bool
		strategy func(l *scripted.Learner) string
		want     int
		asked    int // whole problems that were asked already
	}{
		"right at once":          {"rule-of-thumb", false, once(), 1, 0},
		"wrong at first":         {"rule-of-thumb", false, once("0.9"), 2, 0},
		"with a hint":            {"rule-of-thumb", false, once("hint", "key"), 2, 0},
		"known":                  {"rule-of-thumb", true, once(), 0, 0},
		"known, and wrong":       {"rule-of-thumb", true, once("0.9"), 1, 0},
		"known, and wrong twice": {"rule-of-thumb", true, once("0.9", "0.9"), 2, 0},
		"a decision, right":      {"when-to-leave-compound", false, once(), 1, 1},
		"a decision, passed":     {"when-to-leave-compound", false, once("pass"), 2, 0},
		"a decision, known":      {"when-to-leave-compound", true, once(), 0, 1},
	} {
		f := &shortened{task: c.task, known: c.known}
		l := scripted.NewLearner(t, 3, machine.Imperial, c.strategy)
		if _, err := l.Session.Run(f); err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(l.Log.String(), "Worked example"); n != c.want || f.asked != c.asked {
			t.Errorf("%s: %d worked examples, %d whole problems asked", name, n, f.asked)
		}
	}
}

// shortened is fading of a task that may have been right before.
type shortened struct {
	task  string
	known bool
	asked int
}

func (*shortened) Name() string                        { return "shortened" }
func (*shortened) Farewell(st *sitting.Sitting) string { return st.Stopped() }
func (f *shortened) Run(st *sitting.Sitting) (err error) {
	f.asked, err = run{Sitting: st, known: map[string]bool{f.task: f.known}}.examplesAndFading(f.task, problem.DeriveFirst)
	return err
}

// inABook is a learner whose answers are kept, and the record they are kept in.
func inABook(t *testing.T, strategy func(l *scripted.Learner) string) (*scripted.Learner, *record.Record) {
	t.Helper()
	r, err := record.Open(filepath.Join(t.TempDir(), "r.db"), "Ada")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	book, err := schedule.NewBook(r, machine.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	l := scripted.NewLearner(t, 5, machine.Imperial, strategy)
	l.Session.KeepIn(book, r.Sittings())
	at := now
	l.Session.Clock = func() time.Time { at = at.Add(5 * time.Second); return at }
	return l, r
}

// A failed check names the part to take again, and the lesson goes on there; one that is
// passed finishes the lesson. The end says what today has gained and what is due tomorrow.
func TestTheEndOfALesson(t *testing.T) {
	wrong := ""
	l, r := inABook(t, func(l *scripted.Learner) string {
		if l.Problem.Task.Name == wrong && strings.Contains(l.Log.String(), "Mixed check\n") {
			return "0.9"
		}
		return l.Key()
	})
	lesson, err := content.Shipped().Lesson("dial-book")
	if err != nil {
		t.Fatal(err)
	}
	wrong = lesson.Parts[1].Task
	if _, err := l.Session.Run(Lesson{Lesson: "dial-book"}); err != nil {
		t.Fatal(err)
	}
	log := l.Log.String()
	if want := `Take part 2 again, "` + lesson.Parts[1].Title + `". Next time`; !strings.Contains(strings.Join(strings.Fields(log), " "), want) {
		t.Errorf("no %q in\n%s", want, log[max(0, len(log)-900):])
	}
	if !strings.Contains(log, "Newly shown today: ") || !strings.Contains(log, "Due tomorrow: ") {
		t.Error(log[max(0, len(log)-900):])
	}
	if part, ok, err := r.Place("dial-book"); part != 1 || !ok || err != nil {
		t.Errorf("goes on at %d, %v, %v", part, ok, err)
	}
	wrong = ""
	l.Log.Reset()
	if _, err := l.Session.Run(Lesson{Lesson: "dial-book"}); err != nil {
		t.Fatal(err)
	}
	if log := l.Log.String(); !strings.Contains(log, "Next in this lesson: part 2 of 4") || strings.Contains(log, "Take part") {
		t.Error(log)
	}
	if part, _, _ := r.Place("dial-book"); part != len(lesson.Parts) {
		t.Errorf("a lesson that is finished is at part %d", part)
	}
}
