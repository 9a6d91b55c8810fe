package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "bore-for-inside-thread", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    inputs(problem.ThreadInputs, nominalInput),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"b1-1", "handbook"},
	Draw:      func(d *problem.Draw) problem.Values { return drawSized(d, calc.Inside) },
	Work: func(v problem.Values) (problem.Working, error) {
		if err := only(v, calc.Inside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		nominal, pitch := nominalStep(w, v), w.Pitch()
		w.Length("B", "D - 1.082532 x P")(calc.BasicInternalMinor(nominal, pitch))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "major", Work: lessPitches(0)},
		{Name: "one-side", Work: lessPitches(calc.BasicInternal.Factor())},
		{Name: "d-minus-p", Convention: true, Work: lessPitches(1)},
		{Name: "ext-minor", Work: lessPitches(2 * calc.UnifiedExternal.Factor())},
	},
})
