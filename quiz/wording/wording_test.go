package wording_test

import (
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

func remake(t testing.TB, code string) *problem.Problem {
	t.Helper()
	p, err := (tasks.Set{}).FromCode(code)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The order of the feedback: the two answers, the error, the working, the lathe, the
// caution of a task that can hurt; at most 60 words besides the working.
func TestFeedback(t *testing.T) {
	for _, task := range tasks.All() {
		w, err := wording.Load(content.Shipped(), task.Name)
		if err != nil {
			t.Fatal(err)
		}
		for seed := range uint32(60) {
			system := machine.System(seed % 2)
			if !task.Allows(system) {
				system = task.Systems[0]
			}
			p, err := problem.New(task, problem.NewCode(task.Name, problem.Level(1+seed%3), system, seed, machine.DefaultLathe(system)))
			if err != nil {
				t.Fatal(err)
			}
			marks := []answer.Mark{p.MarkResponse(p.Expected.Key)}
			for _, known := range p.Expected.Errors {
				marks = append(marks, p.MarkResponse(known.Response))
			}
			if p.Expected.Kind == answer.Quantity {
				marks = append(marks, p.MarkResponse(answer.NumberResponse(99)), p.MarkResponse(answer.NumberResponse(-99)))
			}
			for _, m := range marks {
				f := w.Feedback(p, m)
				if f.Verdict == "" || strings.Contains(f.Text(), "${") || strings.Contains(f.Text(), "..") {
					t.Errorf("%s %s: %q", p.Code, m.Verdict, f.Text())
				}
				if m.Correct() {
					continue
				}
				if f.Reason == "" || f.Lathe == "" && m.Verdict != answer.SafeWrong || task.SafetyCritical == (len(f.Safety) == 0) {
					t.Errorf("%s %s: something is missing: %+v", p.Code, m.Verdict, f)
				}
				if len(p.Working.Steps) > 0 && len(f.Working) == 0 {
					t.Errorf("%s: no working", p.Code)
				}
				if p.Expected.Options == nil {
					if n := wordCount(f.Verdict, f.Reason, f.Lathe, strings.Join(f.Safety, " ")); n > 60 {
						t.Errorf("%s %s: %d words", p.Code, m.Error, n)
					}
				}
			}
		}
	}
}

// wordCount counts words, not numbers.
func wordCount(texts ...string) int {
	n := 0
	for _, w := range strings.Fields(strings.Join(texts, " ")) {
		if strings.ContainsFunc(w, func(r rune) bool { return r >= 'a' && r <= 'z' }) {
			n++
		}
	}
	return n
}

// The question stands alone, and its numbered lines are the options or the readings.
func TestQuestionHasNoNumberedLines(t *testing.T) {
	for code, want := range map[string]string{
		"cross-slide-return@1-0001": "What does the dial read", "square-the-tool@1-0001": "What was wrong?", "thread-dial-line@1-0001": "for the next pass?",
	} {
		p := remake(t, code)
		w, err := wording.Load(content.Shipped(), p.Task.Name)
		if err != nil {
			t.Fatal(err)
		}
		q := w.Question(p)
		if len(q) < len(want) || q[len(q)-len(want):] != want {
			t.Errorf("%s: %q", code, q)
		}
		if n := len(w.ReadingLabels(p)); n != len(p.Expected.Key.Xs) {
			t.Errorf("%s: %d labels", code, n)
		}
	}
}
func BenchmarkWorkingAndFeedback(b *testing.B) {
	p := remake(b, "compound-travel@2-7f3a")
	w, err := wording.Load(content.Shipped(), "compound-travel")
	if err != nil {
		b.Fatal(err)
	}
	m := p.Mark("0.9")
	b.ReportAllocs()
	for b.Loop() {
		if w.Feedback(p, m).Text() == "" {
			b.Fatal("no feedback")
		}
	}
}
