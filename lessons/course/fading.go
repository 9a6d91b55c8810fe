package course

import (
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// examplesAndFading shows two problems worked in full, then leaves the last step
// blank, then the last two: help is taken away from the end. One right answer goes
// forward, two wrong ones go back. Tasks without steps to blank (decisions, orders)
// are shown twice and then asked whole.
func (r run) examplesAndFading(task string, level problem.Level) error {
	for range 2 {
		if err := r.example(task, level); err != nil {
			return err
		}
	}
	most := 2
	wrong := 0
	for blanks, tries := 1, 0; blanks <= most && tries < 6; tries++ {
		p, w, err := r.Problem(task, level, nil)
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
		ok, err := r.faded(p, w, blanks)
		if err != nil {
			return err
		}
		switch {
		case ok:
			blanks, wrong = blanks+1, 0
		case wrong == 1 && blanks == 1: // nothing to go back to but another example
			wrong = 0
			if err := r.example(task, level); err != nil {
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

// example shows one worked example and waits.
func (r run) example(task string, level problem.Level) error {
	p, w, err := r.Problem(task, level, nil)
	if err != nil {
		return err
	}
	if err := r.Show(sitting.Example(r.Session, p, w)); err != nil {
		return err
	}
	return r.GoOn("say-next")
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

// faded shows a problem with its last steps blank and asks for the answer.
func (r run) faded(p *problem.Problem, w *wording.Words, blanks int) (bool, error) {
	asked := page.Page{page.Where{Text: r.Say("say-faded", "n", blanks)}, r.QuestionOf(p, w)}
	steps := sitting.Explained(r.Session, p, w)
	for i := len(steps) - blanks; i < len(steps); i++ {
		steps[i] = page.Step{Symbol: p.Working.Steps[i].Symbol, Blank: true}
	}
	a, err := r.Answer(p, w, append(asked, steps), r.Rules)
	return a.Mark.Correct(), err
}
