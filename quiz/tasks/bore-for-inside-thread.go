package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "bore-for-inside-thread", Stage: quiz.Shape,
	Inputs:  inputs(quiz.ThreadInputs, nominalInput),
	Tol:     quiz.Tolerance{Inch: 0.001, MM: 0.025},
	Scrap:   quiz.ScrapHigh,
	Sources: []string{"b1-1", "handbook"},
	Draw:    func(d *quiz.Draw) quiz.Values { return drawSized(d, calc.Inside) },
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := only(v, calc.Inside); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		nominal, pitch := nominalStep(w, v), w.Pitch()
		w.Length("B", "D - 1.082532 x P")(calc.BasicInternalMinor(nominal, pitch))
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "major", Work: lessPitches(0)},
		{Name: "one-side", Work: lessPitches(calc.BasicInternal.Factor())},
		{Name: "d-minus-p", Convention: true, Work: lessPitches(1)},
		{Name: "ext-minor", Work: lessPitches(2 * calc.UnifiedExternal.Factor())},
	},
})
