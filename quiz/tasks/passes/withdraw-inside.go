package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "withdraw-inside", Stage: problem.Passes, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "wall", Symbol: "wall", Type: problem.InputWord, Words: []string{"near", "far", "outside"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		wall := problem.Pick(d, "near", "far", "outside", "outside")
		v.SetWord("wall", wall)
		side := calc.Inside
		if wall == "outside" {
			side = calc.Outside
		}
		d.Job(&v, side)
		return v
	},
	Work: shared.Decide("wall", map[string]string{"near": "to-middle", "far": "to-middle", "outside": "outward"}),
	Errors: []problem.CommonError{
		{Name: "outward", Work: shared.OptionUnlessIn("wall", "outward", "far", "outside")},
		{Name: "away", Work: shared.OptionUnlessIn("wall", "away", "near")},
		{Name: "carriage"},
		{Name: "too-far", Work: shared.OptionUnlessIn("wall", "too-far", "outside")},
		{Name: "stays"},
	},
})
