package blank

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "start-chamfer", Stage: problem.Blank, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.NominalInput),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"navy", "common-practice"},
	Draw:      func(d *problem.Draw) problem.Values { return shared.DrawSized(d, calc.Outside) },
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		shared.MinorSteps(w, v, "d1")
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "one-side", Work: shared.LessPitches(calc.UnifiedExternal.Factor())},
		{Name: "pitch-dia", Work: shared.OtherDiameter(calc.PitchDiameter.Of)},
		{Name: "none", Work: shared.LessPitches(0)},
		{Name: "american-national", Convention: true, Work: shared.LessPitches(2 * calc.AmericanNational.Factor())},
	},
})
