package quiz_test

import (
	"math"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

// bandOf is the first band that holds a number.
func bandOf(t *testing.T, p *quiz.Problem, x float64) quiz.Band {
	t.Helper()
	for _, b := range p.Bands() {
		if b.Low <= x && x <= b.High {
			return b
		}
	}
	t.Fatalf("%s: no band holds %v", p.Code, x)
	return quiz.Band{}
}

// The bands mark as Mark does, for problems that were drawn.
func TestBandsMarkAsMarkDoes(t *testing.T) {
	for _, task := range tasks.All() {
		for seed := range uint32(20) {
			system := machine.System(seed % 2)
			if !task.Allows(system) {
				system = task.Systems[0]
			}
			p, err := quiz.Make(task, quiz.NewCode(task.Name, quiz.Level(1+seed%3), system, seed, machine.DefaultLathe(system)))
			if err != nil {
				t.Fatal(err)
			}
			kind := p.Answer.Kind.Name()
			if (kind == "quantity" || kind == "limits") != (len(p.Bands()) > 0) {
				t.Fatalf("%s: %d bands", p.Code, len(p.Bands()))
			}
			for _, b := range p.Bands() {
				if math.IsInf(b.Low, 0) || math.IsInf(b.High, 0) {
					continue
				}
				x := calc.Round((b.Low+b.High)/2, 8)
				if b.Low == b.High {
					x = b.Low
				}
				m := p.Mark(calc.Shortest(x, 12))
				if got := bandOf(t, p, x).Mark; got.Verdict != m.Verdict || got.Slip != m.Slip || got.Points != m.Points {
					t.Errorf("%s %v: %s %s, marked %s %s", p.Code, x, got.Verdict, got.Slip, m.Verdict, m.Slip)
				}
			}
		}
	}
}

// Someone's own numbers may bring two slips to one place: neither is named there.
func TestBandsWhereSlipsCoincide(t *testing.T) {
	task, err := tasks.Find("compound-travel")
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for angle := 5.0; angle <= 45; angle += 0.5 {
		v := quiz.NewValues(task.Inputs, machine.Imperial)
		v.Set("tpi", 12)
		v.Set("angle", angle)
		p, err := quiz.Worked(task, v, machine.InchLathe)
		if err != nil {
			t.Fatal(err)
		}
		p.SlipReplies(func(s *quiz.Slip, r quiz.Reply) {
			m := p.MarkReply(r)
			found = found || m.Slip == "" && m.Verdict != quiz.Right
			if got := bandOf(t, p, r.X).Mark; got.Slip != m.Slip || got.Verdict != m.Verdict {
				t.Errorf("%v degrees, %s: %s %s, marked %s %s", angle, s.Name, got.Verdict, got.Slip, m.Verdict, m.Slip)
			}
		})
	}
	if !found {
		t.Error("no two slips came to one place")
	}
}

// The question stands alone, and its numbered lines are the options or the readings.
func TestQuestionHasNoNumberedLines(t *testing.T) {
	for code, want := range map[string]string{
		"cross-slide-return@1-0001": "What does the dial read", "square-the-tool@1-0001": "What was wrong?", "thread-dial-line@1-0001": "for the next pass?",
	} {
		p := remake(t, code)
		w, err := quiz.LoadWords(content.Shipped(), p.Task.Name)
		if err != nil {
			t.Fatal(err)
		}
		q := w.Question(p)
		if len(q) < len(want) || q[len(q)-len(want):] != want {
			t.Errorf("%s: %q", code, q)
		}
		if n := len(w.ReadingLabels(p)); n != len(p.Answer.Key.Xs) {
			t.Errorf("%s: %d labels", code, n)
		}
	}
}
