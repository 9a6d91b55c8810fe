package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "start-chamfer", Stage: problem.Blank, Kind: answer.Quantity,
	Inputs:    inputs(problem.ThreadInputs, nominalInput),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"navy", "common-practice"},
	Draw:      func(d *problem.Draw) problem.Values { return drawSized(d, calc.Outside) },
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		minorSteps(w, v, "d1")
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "one-side", Work: lessPitches(calc.UnifiedExternal.Factor())},
		{Name: "pitch-dia", Work: lessPitches(calc.AmericanNational.Factor())},
		{Name: "none", Work: lessPitches(0)},
		{Name: "american-national", Convention: true, Work: lessPitches(2 * calc.AmericanNational.Factor())},
	},
})
