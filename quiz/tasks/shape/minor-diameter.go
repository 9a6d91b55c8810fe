package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "minor-diameter", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.NominalInput),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Scrap:     answer.ScrapLow,
	Sources:   []string{"navy", "b1-1"},
	Draw:      func(d *problem.Draw) problem.Values { return shared.DrawSized(d, calc.Outside) },
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		shared.MinorSteps(w, v, "d1")
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "one-side", Work: shared.LessPitches(calc.UnifiedExternal.Factor())},
		{Name: "d-minus-p", Work: shared.LessPitches(1)},
		{Name: "sharp-v", Work: shared.LessPitches(2 * calc.SharpV.Factor())},
		{Name: "four", Work: shared.LessPitches(4 * calc.UnifiedExternal.Factor())},
		{Name: "inside-minor", Work: shared.OtherDiameter(calc.BasicBore.Of)},
		{Name: "american-national", Convention: true, Work: shared.LessPitches(2 * calc.AmericanNational.Factor())},
		{Name: "unr", Convention: true, Work: shared.OtherDiameter(calc.UNRMinor)},
	},
})
