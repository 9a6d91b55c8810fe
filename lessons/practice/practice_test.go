package practice

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// help, repeat and hint can be typed at any question and count for nothing; stop
// ends with what was answered.
func TestWordsThatCanBeTypedAnywhere(t *testing.T) {
	replies := []string{"help", "REPEAT", "hint", "", "0.9", "stop"}
	l := scripted.NewLearner(t, 1, machine.Imperial, nil)
	i := 0
	l.Answer = func(page.Prompt) (string, error) { i++; return replies[i-1], nil }
	answers, err := l.Session.Run(Practice{Tasks: []string{"infeed-left"}, Level: problem.NumbersGiven, Count: 5})
	if !errors.Is(err, page.ErrStopped) || len(answers) != 1 {
		t.Fatalf("%v after %d answers", err, len(answers))
	}
	if a := answers[0]; !a.Hint || a.Mark.Correct() {
		t.Errorf("%+v", a)
	}
	var stopped page.Stopped
	if !errors.As(err, &stopped) || stopped.Farewell != "Stopped. 1 answered, 0 right." {
		t.Errorf("%+v", stopped)
	}
	if n := strings.Count(l.Log.String(), "How much infeed is left?"); n != 3 { // asked, repeated, next problem
		t.Errorf("the question stands %d times", n)
	}
	if !strings.Contains(l.Log.String(), "Hint: Each line of the log") || !strings.Contains(l.Log.String(), "nothing was typed") {
		t.Error(l.Log.String())
	}
}

// A problem is not asked again with the same numbers, and a decision comes in
// another situation than last time.
func TestNumbersAndSituationsChange(t *testing.T) {
	for task, n := range map[string]int{"when-to-leave-compound": 12, "compound-travel": 20} {
		l := scripted.NewLearner(t, 2, machine.Imperial, (*scripted.Learner).Key)
		if _, err := l.Session.Run(Practice{Tasks: []string{task}, Level: problem.NumbersGiven, Count: n}); err != nil {
			t.Fatal(err)
		}
		seen, last := map[string]bool{}, ""
		for _, p := range l.Posed {
			w, err := l.Session.Words(p.Task.Name)
			if err != nil {
				t.Fatal(err)
			}
			key := l.Session.QuestionOf(p, w)
			if text := key.Text + strings.Join(key.Lines, " "); seen[text] {
				t.Errorf("asked twice: %s", text)
			} else {
				seen[text] = true
			}
			if c := p.Values.Situation(); c != "" && c == last {
				t.Errorf("situation %s twice running", c)
			}
			last = p.Values.Situation()
		}
		if len(l.Posed) != n {
			t.Errorf("%s: %d problems", task, len(l.Posed))
		}
	}
}

// A decision does not come in the situation of the sitting before, nor of the one before
// that, where a record is kept.
func TestSituationsChangeFromSittingToSitting(t *testing.T) {
	r, err := record.Open(filepath.Join(t.TempDir(), "r.db"), "Ada")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	book, err := schedule.NewBook(r, machine.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	var last []string
	for range 12 {
		l := scripted.NewLearner(t, 2, machine.Imperial, (*scripted.Learner).Key) // the same seeds each time
		l.Session.KeepIn(book, r.Sittings())
		if _, err := l.Session.Run(Practice{Tasks: []string{"when-to-leave-compound"}, Level: problem.NumbersGiven, Count: 1}); err != nil {
			t.Fatal(err)
		}
		now := l.Posed[0].Values.Situation()
		if slices.Contains(last[max(0, len(last)-2):], now) {
			t.Errorf("%s comes again after %v", now, last)
		}
		last = append(last, now)
		if !strings.Contains(l.Log.String(), "Newly shown today: ") || !strings.Contains(l.Log.String(), "Due tomorrow: ") {
			t.Error(l.Log.String())
		}
	}
}

// Never the same task twice running where there is another.
func TestPracticeInterleaves(t *testing.T) {
	l := scripted.NewLearner(t, 4, machine.Imperial, (*scripted.Learner).Key)
	answers, err := l.Session.Run(Practice{Tasks: []string{"infeed-left", "single-depth", "compound-travel"}, Level: problem.NumbersGiven, Count: 60})
	if err != nil {
		t.Fatal(err)
	}
	for i := 1; i < len(answers); i++ {
		if answers[i].Task == answers[i-1].Task {
			t.Errorf("%s twice running", answers[i].Task)
		}
	}
}

// One number with two causes is followed by a question that tells them apart.
func TestFollowUpTellsTwoCausesApart(t *testing.T) {
	l := scripted.NewLearner(t, 6, machine.Imperial, func(l *scripted.Learner) string { return l.Error(2) }) // sin-or-ref
	answers, err := l.Session.Run(Practice{Tasks: []string{"compound-travel"}, Level: problem.NumbersGiven, Count: 1})
	if err != nil {
		t.Fatal(err)
	}
	if a := answers[0]; a.Mark.Error != "sin-or-ref" || a.Cause != "pressed-sin" {
		t.Errorf("%+v", a)
	}
	if said := strings.Join(strings.Fields(l.Log.String()), " "); !strings.Contains(said, "I took the angle from the bed.") || !strings.Contains(said, "so it is the cosine") {
		t.Error(said)
	}
}

// clock is a clock that goes on by so much at every look.
func clock(step time.Duration) func() time.Time {
	at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	return func() time.Time { at = at.Add(step); return at }
}

// A round ends with its time; the question that is up then doesn't count, and the two
// rounds of one learner are compared.
func TestDrillAgainstTheClock(t *testing.T) {
	l := scripted.NewLearner(t, 11, machine.Imperial, (*scripted.Learner).Key)
	l.Session.Clock = clock(8 * time.Second)
	answers, err := l.Session.Run(Drill{Tasks: []string{"infeed-left", "single-depth"}, Length: 90 * time.Second, Level: problem.NumbersGiven})
	if err != nil {
		t.Fatal(err)
	}
	log := l.Log.String()
	// A question takes three looks at the clock: shown, answered, told. The fourth is up at 72 s and answered at 88 s.
	if n := strings.Count(log, "Seconds left"); n != 8 || len(answers) != 8 {
		t.Errorf("%d questions, %d answers\n%s", n, len(answers), log)
	}
	if !strings.Contains(log, "Second round against the first: +0 right.") {
		t.Error(log)
	}
	for _, p := range l.Shown {
		for _, b := range p {
			if score, ok := b.(page.Score); ok && score.Text == "4/4" {
				return
			}
		}
	}
	t.Error("no large figures")
}

// An answer that comes when the time is over is kept and does not count.
func TestDrillTooLate(t *testing.T) {
	l := scripted.NewLearner(t, 11, machine.Imperial, (*scripted.Learner).Key)
	l.Session.Clock = clock(25 * time.Second)
	answers, err := l.Session.Run(Drill{Tasks: []string{"infeed-left"}, Length: 40 * time.Second, Level: problem.NumbersGiven})
	if err != nil || len(answers) != 2 || strings.Count(l.Log.String(), "Time is over. That one does not count.") != 2 {
		t.Errorf("%v, %d answers\n%s", err, len(answers), l.Log.String())
	}
}

// A face with a clock is told how much is left at the start of a round and when it is over;
// whatever is typed too late ends the round, a word too.
func TestDrillTellsTheTime(t *testing.T) {
	l := scripted.NewLearner(t, 11, machine.Imperial, nil)
	l.Answer = func(q page.Prompt) (string, error) {
		if strings.Contains(q.Text, "Enter") {
			return "", nil
		}
		return "t", nil
	}
	l.Session.Clock = clock(25 * time.Second)
	watched := &watched{Learner: l}
	l.Session.Face = watched
	answers, err := l.Session.Run(Drill{Tasks: []string{"infeed-left"}, Players: []string{"Ada", "Ben"}, Length: 40 * time.Second, Level: problem.NumbersGiven})
	if err != nil || len(answers) != 0 || strings.Contains(l.Log.String(), "clock is off") {
		t.Errorf("%v, %d answers\n%s", err, len(answers), l.Log.String())
	}
	if got := strings.Join(watched.told, ", "); got != "Seconds left: 7, Time is over. This one does not count., -, Seconds left: 7, Time is over. This one does not count., -" {
		t.Error(got)
	}
}

// watched is a face with a clock.
type watched struct {
	*scripted.Learner
	told []string
}

func (w *watched) Countdown(seconds float64, says func(left int) string) {
	if says == nil {
		w.told = append(w.told, "-")
		return
	}
	w.told = append(w.told, says(7), says(0))
}

// With the clock off the question at hand stays, and a round has ten.
func TestDrillUntimed(t *testing.T) {
	off := false
	l := scripted.NewLearner(t, 12, machine.Imperial, func(l *scripted.Learner) string {
		if !off {
			off = true
			return "t"
		}
		return l.Key()
	})
	l.Session.Clock = clock(time.Second)
	answers, err := l.Session.Run(Drill{Tasks: []string{"infeed-left"}, Players: []string{"Ada"}, Length: time.Minute, Level: problem.NumbersGiven})
	if err != nil || len(answers) != untimedOf {
		t.Errorf("%v, %d answers", err, len(answers))
	}
}

// What can hurt is never drilled: by name it is refused, of a stage it is left out.
func TestHarmless(t *testing.T) {
	if _, err := Harmless(tasks.Set{}, []string{"single-depth", "reversing-a-screwed-chuck"}); err == nil || !strings.Contains(err.Error(), "reversing-a-screwed-chuck can hurt someone") {
		t.Error(err)
	}
	if names, err := Harmless(tasks.Set{}, []string{"single-depth"}); err != nil || len(names) != 1 {
		t.Error(names, err)
	}
	whole, _ := Resolve(tasks.Set{}, []string{"passes"})
	names, err := Harmless(tasks.Set{}, []string{"passes"})
	if err != nil || len(names) == 0 || len(names) >= len(whole) {
		t.Errorf("%d of %d, %v", len(names), len(whole), err)
	}
	for _, name := range names {
		if task, _ := (tasks.Set{}).Find(name); task.SafetyCritical {
			t.Errorf("%s can hurt someone", name)
		}
	}
}

// What is true of one sitting ends with it: after practice that asks how sure someone is,
// plain practice does not, and it counts its own answers alone.
func TestASittingLeavesNothingBehind(t *testing.T) {
	l := scripted.NewLearner(t, 9, machine.Imperial, (*scripted.Learner).Key)
	if _, err := l.Session.Run(MixedTest{Level: problem.NumbersGiven}); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(l.Log.String(), "How sure are you?") {
		t.Fatal("the test asks nobody how sure they are: it shows nothing")
	}
	l.Log.Reset()
	if _, err := l.Session.Run(Practice{Tasks: []string{"reversing-a-screwed-chuck"}, Level: problem.NumbersGiven, Count: 2}); err != nil {
		t.Fatal(err)
	}
	if log := l.Log.String(); strings.Contains(log, "How sure are you?") {
		t.Errorf("plain practice asks how sure someone is:\n%s", log)
	}
	if log := l.Log.String(); !strings.Contains(log, "2 answered, 2 right.") {
		t.Errorf("the closing page counts another sitting:\n%s", log)
	}
}
