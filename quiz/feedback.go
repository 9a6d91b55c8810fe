package quiz

import (
	"strings"

	"scratchpass/content"
)

// Feedback is what a learner is told about an answer, in the order it is shown.
type Feedback struct {
	Verdict string   // one line: the two answers, or that it was right
	Reason  string   // the wrong road, the unit, the other convention, or that it can't be told
	Working []string // a line a step; empty when the answer was right
	Lathe   string   // what would happen at the lathe
	Safety  []string // the cautions of a task that can hurt someone
}

// Feedback words a mark.
func (w *Words) Feedback(p *Problem, m Mark) Feedback {
	if m.Verdict == Unread {
		text, _ := content.Fill(w.Phrases["mark-unread"], one("problem", m.Err.Error()))
		return Feedback{Verdict: text}
	}
	values := func(name string) (string, bool) {
		switch name {
		case "given":
			return strings.TrimSuffix(w.ShownAnswer(p, m.Reply), "."), true // the sentence has its own stop
		case "answer":
			return strings.TrimSuffix(w.KeyText(p), "."), true
		}
		return "", false
	}
	phrase := func(key string) string {
		text, _ := content.Fill(w.Phrases[key], values)
		return text
	}
	var f Feedback
	switch m.Verdict {
	case Right:
		f.Verdict = phrase("mark-right")
		f.Reason, _ = w.fill(p, w.Task.Because[p.Values.Case()])
		return f
	case Convention:
		f.Verdict = phrase("mark-convention")
		f.Reason, _ = w.fill(p, w.Task.Slips[m.Slip])
		return f
	}
	if m.Passed {
		f.Verdict, f.Reason, f.Working = phrase("mark-passed"), w.because(p), w.StepLines(p)
		if _, ok := p.Answer.Kind.(order); ok {
			f.Working = w.Moves(p, p.Answer.Key)
		}
		return f
	}
	f.Verdict = phrase("mark-wrong")
	switch m.Verdict {
	case NamedSlip:
		f.Reason, _ = w.fill(p, w.Task.Slips[m.Slip])
	case UnitSlip:
		f.Reason = phrase("mark-unit")
	case ScrapWrong:
		f.Reason = phrase("mark-scrap-side")
	case SafeWrong:
		f.Reason = phrase("mark-safe-side")
		if m.Slip != "" {
			f.Reason, _ = w.fill(p, w.Task.Slips[m.Slip])
		}
	default:
		f.Reason = phrase("mark-cannot-tell")
		if p.farOff(m.Reply) {
			f.Reason = phrase("mark-far-off")
		}
		if _, ok := p.Answer.Kind.(several); ok {
			f.Reason = phrase("mark-some-wrong")
		}
	}
	f.Reason = strings.TrimSpace(f.Reason + " " + w.because(p))
	f.Working = w.StepLines(p)
	if _, ok := p.Answer.Kind.(order); ok {
		f.Working = w.Moves(p, m.Reply)
	}
	if m.Verdict != SafeWrong { // nothing of the kind would happen
		f.Lathe, _ = w.fill(p, w.Task.AtTheLathe)
	}
	if p.Task.Gate {
		for _, key := range w.Task.Safety {
			f.Safety = append(f.Safety, w.Safety[key].Text)
		}
	}
	return f
}

// because says why the right answer of a decision is right; empty for other tasks.
func (w *Words) because(p *Problem) string {
	text, _ := w.fill(p, w.Task.Because[p.Values.Case()])
	return text
}

// Moves lists the moves of an order, one a line, and marks the first that stood
// elsewhere in a reply.
func (w *Words) Moves(p *Problem, given Reply) []string {
	lines := make([]string, len(p.Answer.Key.Keys))
	marked := false
	for i, key := range p.Answer.Key.Keys {
		text, _ := w.fill(p, w.Task.Options[key])
		lines[i] = p.Answer.number(key) + ") " + text
		if !marked && i < len(given.Keys) && given.Keys[i] != key {
			wrong, _ := w.fill(p, w.Task.Options[given.Keys[i]])
			lines[i] += " <- " + content.Printable(wrong) + "?"
			marked = true
		}
	}
	return lines
}

func one(name, value string) func(string) (string, bool) {
	return func(asked string) (string, bool) { return value, asked == name }
}

// StepLines prints the working, a line a step: h = 0.61343 x P = 0.61343 x 0.076923 = 0.047187 in.
func (w *Words) StepLines(p *Problem) []string {
	lines := make([]string, len(p.Working.Steps))
	for i := range p.Working.Steps {
		lines[i] = p.Working.Line(i)
	}
	return lines
}

// Line prints one step.
func (w *Working) Line(i int) string {
	s := w.Steps[i]
	value := s.Unit.WithName(s.Value())
	if s.Formula == "" {
		return s.Symbol + " = " + value
	}
	with := w.With(i)
	if with == s.Formula { // nothing to put in: the formula is the number
		return s.Symbol + " = " + with + " = " + value
	}
	return s.Symbol + " = " + s.Formula + " = " + with + " = " + value
}

// Text joins the feedback into one text.
func (f Feedback) Text() string {
	parts := []string{f.Verdict, f.Reason}
	if len(f.Working) > 0 {
		parts = append(parts, strings.Join(f.Working, "\n"))
	}
	parts = append(parts, f.Lathe)
	parts = append(parts, f.Safety...)
	var said []string
	for _, part := range parts {
		if part != "" {
			said = append(said, part)
		}
	}
	return strings.Join(said, "\n")
}
