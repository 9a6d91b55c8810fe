package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "start-chamfer", Stage: quiz.Blank,
	Inputs:  inputs(quiz.ThreadInputs, nominalInput),
	Tol:     quiz.Tolerance{Inch: 0.001, MM: 0.025},
	Sources: []string{"navy", "common-practice"},
	Draw:    func(d *quiz.Draw) quiz.Values { return drawSized(d, calc.Outside) },
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		minorSteps(w, v, "d1")
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "one-side", Work: lessPitches(calc.UnifiedExternal.Factor())},
		{Name: "pitch-dia", Work: lessPitches(calc.AmericanNational.Factor())},
		{Name: "none", Work: lessPitches(0)},
		{Name: "american-national", Convention: true, Work: lessPitches(2 * calc.AmericanNational.Factor())},
	},
})
