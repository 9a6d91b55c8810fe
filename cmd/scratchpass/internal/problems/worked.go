package problems

import (
	"fmt"
	"strings"

	"scratchpass/lessons"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// workedText is a problem's working with its key, what wrong roads give, and the
// cautions.
func workedText(p *problem.Problem, w *wording.Words) lessons.Text {
	doc := w.Document(p, true)
	var text lessons.Text
	say := func(format string, args ...any) {
		text = append(text, lessons.Block{Text: fmt.Sprintf(format, args...)})
	}
	for _, g := range doc.Given {
		say("given %s: %s = %s %s", g.Name, g.Symbol, g.Value, g.Unit)
	}
	for i, s := range doc.Steps {
		say("  %s", p.Working.Line(i))
		if s.Means != "" {
			say("    %s: %s", s.Symbol, s.Means)
		}
	}
	say("answer: %s", w.KeyText(p))
	if a := doc.Answer; a.Low != nil && a.High != nil {
		say("accepted: %v to %v %s", *a.Low, *a.High, a.Unit)
	}
	for _, s := range p.Expected.Errors {
		say("wrong road %s, %s: %s", s.Name, w.Shown(p, s.Response), strings.TrimSpace(w.Task.Slips[s.Name]))
	}
	say("at the lathe: %s", w.Task.AtTheLathe)
	for _, c := range doc.Safety {
		say("CAUTION: %s", c)
	}
	say("sources: %s", strings.Join(doc.Sources, ", "))
	return text
}
