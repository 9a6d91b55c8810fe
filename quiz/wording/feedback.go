package wording

import (
	"strings"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// Feedback is what a learner is told about an answer, in the order it is shown.
type Feedback struct {
	Verdict string   // one line: right, or not
	Given   string   // of an answer that is not right: what was given, as a sentence
	Answer  string   // and what is right
	Off     string   // by how much an answer that is right is off the printed one; empty where it is not
	Reason  string   // the common error, the unit, the other convention, or that it can't be told
	Working []string // a line a step; empty when the answer was right
	Lathe   string   // what would happen at the lathe
	Safety  []string // the cautions of a task that can hurt someone
}

// Feedback words a mark.
func (w *Words) Feedback(p *problem.Problem, m answer.Mark) Feedback {
	if m.Verdict == answer.Unread {
		return Feedback{Verdict: content.FillPairs(w.Phrases["mark-unread"], "problem", w.Unread(m.Unread))}
	}
	phrase := func(key string) string { return w.aboutAnswer(p, m, key) }
	switch {
	case m.Verdict == answer.Right:
		return Feedback{Verdict: phrase("mark-right"), Off: w.off(p, m), Reason: w.because(p)}
	case m.Verdict == answer.Convention:
		return Feedback{Verdict: phrase("mark-convention"), Reason: w.filled(p, w.Task.Slips[m.Error])}
	case m.Passed:
		return Feedback{Verdict: phrase("mark-passed"), Answer: phrase("mark-answer"), Reason: w.because(p), Working: w.way(p, p.Expected.Key)}
	}
	f := Feedback{
		Verdict: phrase("mark-wrong"), Given: phrase("mark-given"), Answer: phrase("mark-answer"),
		Reason:  strings.TrimSpace(w.reason(p, m) + " " + w.because(p)),
		Working: w.way(p, m.Response),
	}
	if m.Verdict != answer.SafeWrong { // nothing of the kind would happen
		f.Lathe = w.filled(p, w.Task.AtTheLathe)
	}
	if p.Task.SafetyCritical {
		for _, key := range w.Task.Safety {
			f.Safety = append(f.Safety, w.Safety[key].Text)
		}
	}
	return f
}

// off says by how much an answer that is right is off the printed one.
func (w *Words) off(p *problem.Problem, m answer.Mark) string {
	var offs []string
	for _, off := range p.Expected.Off(m.Response) {
		one := content.FillPairs(w.Phrases["mark-close-"+side(&p.Expected, off)], "off", off.Text)
		if len(m.Response.Xs) > 1 {
			one = content.FillPairs(w.Phrases["mark-close-number"], "n", off.Number, "off", one)
		}
		offs = append(offs, one)
	}
	if len(offs) == 0 {
		return ""
	}
	return content.FillPairs(w.aboutAnswer(p, m, "mark-close"), "offs", strings.Join(offs, ", "))
}

// side is the name of what a number is that is off: lengths are high or low, all else is
// more or less.
func side(e *answer.Expected, off answer.Off) string {
	length := e.Unit.Name == machine.InchUnit.Name || e.Unit.Name == machine.MMUnit.Name
	switch {
	case length && off.By > 0:
		return "high"
	case length:
		return "low"
	case off.By > 0:
		return "more"
	}
	return "less"
}

// aboutAnswer fills what was given and what is right into a phrase.
func (w *Words) aboutAnswer(p *problem.Problem, m answer.Mark, key string) string {
	text, _ := content.Fill(w.Phrases[key], func(name string) (string, bool) {
		switch name {
		case "given":
			return strings.TrimSuffix(w.Shown(p, m.Response), "."), true // the sentence has its own stop
		case "answer":
			return strings.TrimSuffix(w.KeyText(p), "."), true
		}
		return "", false
	})
	return text
}

// reason says which error a wrong answer comes from, or that it can't be told.
func (w *Words) reason(p *problem.Problem, m answer.Mark) string {
	phrase := func(key string) string { return w.aboutAnswer(p, m, key) }
	switch {
	case m.Error != "":
		return w.filled(p, w.Task.Slips[m.Error])
	case m.Verdict == answer.WrongUnit:
		return phrase("mark-unit")
	case m.Verdict == answer.ScrapWrong:
		return phrase("mark-scrap-side")
	case m.Verdict == answer.SafeWrong:
		return phrase("mark-safe-side")
	case p.Expected.Far(m.Response):
		return w.far(p)
	}
	if missing := p.Expected.OnlyMissing(m.Response); missing {
		return phrase("mark-only-missing")
	}
	own := "mark-cannot-tell-" + p.Task.Kind.Name() // some kinds have words of their own
	if _, ok := w.Phrases[own]; ok {
		return phrase(own)
	}
	return phrase("mark-cannot-tell")
}

// far says that a number is of another size, and what of this problem could be the cause.
func (w *Words) far(p *problem.Problem) string {
	these := []string{w.Phrases["far-point"]}
	if u := p.Expected.Unit; u.Name == machine.InchUnit.Name || u.Name == machine.MMUnit.Name {
		these = append(these, w.Phrases["far-unit"])
	}
	threads, angle := false, false
	for _, in := range p.Task.Inputs {
		threads = threads || in.Type == problem.InputTPI && p.Values.Has(in.Name)
		angle = angle || in.Type == problem.InputAngle && p.Values.Has(in.Name)
	}
	if threads {
		these = append(these, w.Phrases["far-pitch"])
	}
	if angle {
		these = append(these, w.Phrases["far-angle"])
	}
	return content.FillPairs(w.Phrases["mark-far-off"], "these", strings.Join(these, ", "))
}

// way is the working, or of steps in order the order itself, with the first mistake of a
// response marked in it.
func (w *Words) way(p *problem.Problem, r answer.Response) []string {
	if p.Task.Kind.InOrder() {
		return w.Moves(p, r)
	}
	return w.StepLines(p)
}

// because says why the right answer of a decision is right; empty for other tasks.
func (w *Words) because(p *problem.Problem) string {
	return w.filled(p, w.Task.Because[p.Values.Situation()])
}

func (w *Words) filled(p *problem.Problem, text string) string {
	text, _ = w.fill(p, text)
	return text
}

// Moves lists the moves of an order, one a line. Behind the first that stood elsewhere in a
// response it says what was given in its place.
func (w *Words) Moves(p *problem.Problem, given answer.Response) []string {
	lines := make([]string, len(p.Expected.Key.Keys))
	marked := false
	for i, key := range p.Expected.Follow(p.Expected.Key, given).Keys {
		text, _ := w.fill(p, w.Task.Options[key])
		lines[i] = p.Expected.Number(key) + ") " + text
		if !marked && i < len(given.Keys) && given.Keys[i] != key {
			wrong, _ := w.fill(p, w.Task.Options[given.Keys[i]])
			lines[i] += " " + content.FillPairs(w.Phrases["order-given-here"], "n", p.Expected.Number(given.Keys[i]), "given", strings.TrimSuffix(content.Printable(wrong), "."))
			marked = true
		}
	}
	return lines
}

// StepLines prints the working, a line a step: h = 0.61343 x P = 0.61343 x 0.076923 = 0.047187 in.
func (w *Words) StepLines(p *problem.Problem) []string {
	lines := make([]string, len(p.Working.Steps))
	for i := range p.Working.Steps {
		lines[i] = p.Working.Line(i)
	}
	return lines
}

// Line is the verdict, and by how much the answer is off.
func (f Feedback) Line() string {
	return strings.Join(strings.Fields(strings.Join([]string{f.Verdict, f.Given, f.Answer, f.Off}, " ")), " ")
}

// Text joins the feedback into one text.
func (f Feedback) Text() string {
	parts := []string{f.Line(), f.Reason}
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
