package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "basic-pitch-diameter", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    inputs(problem.ThreadInputs, nominalInput),
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.0125},
	Sources:   []string{"b1-1", "handbook"},
	Draw: func(d *problem.Draw) problem.Values {
		return drawSized(d, problem.Pick(d, calc.Outside, calc.Inside)) // it is the same for both
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		nominal, pitch := nominalStep(w, v), w.Pitch()
		w.Length("E", "D - 0.649519 x P")(calc.BasicPitchDiameter(nominal, pitch))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "twice", Work: lessPitches(2 * calc.AmericanNational.Factor())},
		{Name: "half", Work: lessPitches(calc.AmericanNational.Factor() / 2)},
		{Name: "use-h", Work: lessPitches(calc.UnifiedExternal.Factor())},
		{Name: "dminor", Work: lessPitches(2 * calc.UnifiedExternal.Factor())},
	},
})
