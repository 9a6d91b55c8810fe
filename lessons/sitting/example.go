package sitting

import (
	"scratchpass/lessons/page"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// Example is a problem worked in full, each letter explained.
func Example(s *Session, p *problem.Problem, w *wording.Words) page.Page {
	shown := page.Page{page.Where{Text: s.Say("say-example")}, s.QuestionOf(p, w), Explained(s, p, w)}
	if p.Task.Kind.InOrder() {
		shown = append(shown, page.Sequence(w.Moves(p, p.Expected.Key)))
	}
	shown = append(shown, page.Verdict{Right: true, Text: s.Say("say-answer", "answer", w.KeyText(p))})
	f := w.Feedback(p, answer.Mark{Verdict: answer.Right, Response: p.Expected.Key})
	return append(shown, page.Paragraph{Text: f.Reason})
}

// Explained is the whole working, with what each letter means.
func Explained(s *Session, p *problem.Problem, w *wording.Words) page.Working {
	steps := make(page.Working, len(p.Working.Steps))
	for i, step := range p.Working.Steps {
		steps[i] = page.Step{Symbol: step.Symbol, Line: p.Working.Line(i)}
		if means := w.Means(step.Symbol); means != "" {
			steps[i].Means = s.Say("say-means", "symbol", step.Symbol, "means", means)
		}
	}
	return steps
}
