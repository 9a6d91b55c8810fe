package course

import (
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// examplesAndFading shows problems worked in full, then leaves the last step blank, then
// the last two: help is taken away from the end. One right answer goes forward, two wrong
// ones go back. There are two worked examples; who is right at the first problem after the
// first of them is spared the second, and who was right at the task before the lesson
// began is spared both. Tasks without steps to blank (decisions, orders) are asked whole
// at once; asked tells how many of the whole problems of the part that took.
func (r run) examplesAndFading(task string, level problem.Level) (asked int, err error) {
	shown := 0
	another := func() error {
		shown++
		return r.example(task, level)
	}
	if !r.known[task] {
		if err := r.GoOn("say-to-example"); err != nil {
			return 0, err
		}
		if err := another(); err != nil {
			return 0, err
		}
	}
	most := 2
	wrong := 0
	for blanks, tries := 1, 0; blanks <= most && tries < 6; tries++ {
		p, w, err := r.Problem(task, level, nil)
		if err != nil {
			return 0, err
		}
		steps := workedSteps(p)
		if steps < 2 { // nothing but the answer itself: that is a whole problem
			return r.firstWhole(p, w, another)
		}
		most = min(most, steps-1)
		if blanks > most {
			return 0, nil
		}
		a, err := r.faded(p, w, blanks)
		if err != nil {
			return 0, err
		}
		switch {
		case a.Mark.Correct() && (blanks > 1 || shown >= 2 || !a.Hint):
			blanks, wrong = blanks+1, 0
		case blanks == 1 && (shown < 2 || wrong == 1): // nothing to go back to but another example
			wrong = 0
			if err := another(); err != nil {
				return 0, err
			}
		case wrong == 1:
			blanks, wrong = blanks-1, 0
		default:
			wrong++
		}
	}
	return 0, nil
}

// firstWhole asks a problem that has no steps to blank. Right, it is the first of the
// whole problems of its part; else another example comes, and all of them.
func (r run) firstWhole(p *problem.Problem, w *wording.Words, another func() error) (asked int, err error) {
	a, err := r.Pose(p, w, page.Where{Text: r.Say("say-first-whole")}, r.Rules)
	if err != nil {
		return 0, err
	}
	if a.Mark.Correct() && !a.Hint {
		return 1, nil
	}
	return 0, another()
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
func (r run) faded(p *problem.Problem, w *wording.Words, blanks int) (sitting.Answered, error) {
	asked := page.Page{page.Where{Text: r.Say("say-faded", "n", blanks)}, r.QuestionOf(p, w)}
	steps := sitting.Explained(r.Session, p, w)
	for i := len(steps) - blanks; i < len(steps); i++ {
		steps[i] = page.Step{Symbol: p.Working.Steps[i].Symbol, Blank: true}
	}
	return r.Answer(p, w, append(asked, steps), r.Rules)
}
