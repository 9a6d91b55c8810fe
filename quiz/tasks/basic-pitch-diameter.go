package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "basic-pitch-diameter", Stage: quiz.Shape,
	Inputs:  inputs(quiz.ThreadInputs, nominalInput),
	Tol:     quiz.Tolerance{Inch: 0.0005, MM: 0.0125},
	Sources: []string{"b1-1", "handbook"},
	Draw: func(d *quiz.Draw) quiz.Values {
		return drawSized(d, quiz.Pick(d, calc.Outside, calc.Inside)) // it is the same for both
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		nominal, pitch := nominalStep(w, v), w.Pitch()
		w.Length("E", "D - 0.649519 x P")(calc.BasicPitchDiameter(nominal, pitch))
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "twice", Work: lessPitches(2 * calc.AmericanNational.Factor())},
		{Name: "half", Work: lessPitches(calc.AmericanNational.Factor() / 2)},
		{Name: "use-h", Work: lessPitches(calc.UnifiedExternal.Factor())},
		{Name: "dminor", Work: lessPitches(2 * calc.UnifiedExternal.Factor())},
	},
})
