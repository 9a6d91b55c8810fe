package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "bore-for-inside-thread", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.NominalInput),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"b1-1", "handbook"},
	Draw:      func(d *problem.Draw) problem.Values { return shared.DrawSized(d, calc.Inside) },
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Inside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		nominal, pitch := shared.NominalStep(w, v), w.Pitch()
		problem.Step2(w, "B", calc.BasicBore, nominal, pitch)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "major", Work: shared.LessPitches(0)},
		{Name: "one-side", Work: shared.LessPitches(calc.BasicInternal.Factor())},
		{Name: "d-minus-p", Convention: true, Work: shared.LessPitches(1)},
		{Name: "no-866", Work: shared.LessPitches(2 * calc.BasicInternal.Factor() / calc.HeightOfSharpV)},
		{Name: "ext-minor", Work: shared.OtherDiameter(calc.MinorDiameter.Of)},
	},
})
