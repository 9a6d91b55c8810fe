package lessons

import (
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// examplesAndFading shows two problems worked in full, then leaves the last step
// blank, then the last two: help is taken away from the end. One right answer goes
// forward, two wrong ones go back. Tasks without steps to blank (decisions, orders)
// are shown twice and then asked whole.
func (s *Session) examplesAndFading(task string, level problem.Level) error {
	for i := range 2 {
		p, w, err := s.problem(task, level)
		if err != nil {
			return err
		}
		if err := s.example(p, w, i+1); err != nil {
			return err
		}
		if err := s.goOn("say-next"); err != nil {
			return err
		}
	}
	most := 2
	wrong := 0
	for blanks, tries := 1, 0; blanks <= most && tries < 6; tries++ {
		p, w, err := s.problem(task, level)
		if err != nil {
			return err
		}
		steps := workedSteps(p)
		if steps < 2 { // nothing but the answer itself: that is a whole problem
			return nil
		}
		most = min(most, steps-1)
		if blanks > most {
			return nil
		}
		ok, err := s.faded(p, w, blanks)
		if err != nil {
			return err
		}
		switch {
		case ok:
			blanks, wrong = blanks+1, 0
		case wrong == 1 && blanks == 1: // nothing to go back to but another example
			wrong = 0
			p, w, err := s.problem(task, level)
			if err != nil {
				return err
			}
			if err := s.example(p, w, 1); err != nil {
				return err
			}
			if err := s.goOn("say-next"); err != nil {
				return err
			}
		case wrong == 1:
			blanks, wrong = blanks-1, 0
		default:
			wrong++
		}
	}
	return nil
}

// workedSteps counts the steps that are worked out and not just read.
func workedSteps(p *problem.Problem) int {
	n := 0
	for _, step := range p.Working.Steps {
		if step.Formula != "" {
			n++
		}
	}
	return n
}

// example shows a problem worked in full, each letter explained.
func (s *Session) example(p *problem.Problem, w *wording.Words, i int) error {
	prompt, _ := w.Ask(p)
	text := Text{{Faint, s.say("say-example", "i", i)}, {Plain, prompt}}
	text = append(text, s.steps(p, w, len(p.Working.Steps))...)
	if p.Task.Kind.InOrder() {
		for _, line := range w.Moves(p, p.Expected.Key) {
			text = append(text, Block{Figures, "  " + line})
		}
	}
	text = append(text, Block{Good, s.say("say-answer", "answer", w.KeyText(p))})
	if f := w.Feedback(p, answer.Mark{Verdict: answer.Right, Response: p.Expected.Key}); f.Reason != "" {
		text = append(text, Block{Plain, f.Reason})
	}
	return s.Terminal.Show(text)
}

// steps shows the first n lines of a working, with what each letter means.
func (s *Session) steps(p *problem.Problem, w *wording.Words, n int) Text {
	var text Text
	for i := range n {
		text = append(text, Block{Figures, "  " + p.Working.Line(i)})
		if means := w.Means(p.Working.Steps[i].Symbol); means != "" {
			text = append(text, Block{Faint, s.say("say-means", "symbol", p.Working.Steps[i].Symbol, "means", means)})
		}
	}
	return text
}

// faded shows a problem with its last steps blank and asks for the answer.
func (s *Session) faded(p *problem.Problem, w *wording.Words, blanks int) (bool, error) {
	prompt, _ := w.Ask(p)
	shown := len(p.Working.Steps) - blanks
	text := Text{{Faint, s.say("say-faded", "n", blanks)}, {Plain, prompt}}
	text = append(text, s.steps(p, w, shown)...)
	for i := shown; i < len(p.Working.Steps); i++ {
		text = append(text, Block{Figures, "  " + p.Working.Steps[i].Symbol + " = ..."})
	}
	a, err := s.answer(p, w, text, false)
	return a.Mark.Correct(), err
}
