package blank

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "tool-height", Stage: problem.Blank, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "at", Symbol: "at", Type: problem.InputWord, Words: []string{"outside", "inside", "leans-to", "leans-away"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		at := problem.Pick(d, "outside", "inside", "leans-to", "leans-to", "leans-away", "leans-away")
		v.SetWord("at", at)
		side := calc.Outside
		if at == "inside" {
			side = calc.Inside
		}
		d.Job(&v, side)
		return v
	},
	Work: shared.Decide("at", map[string]string{
		"outside": "on-centre", "inside": "on-centre", "leans-to": "raise", "leans-away": "lower",
	}),
	Errors: []problem.CommonError{
		// Some books set a boring tool a little high: no wrong option for inside threads.
		{Name: "above", Work: shared.OptionUnlessIn("at", "above", "inside", "leans-to", "leans-away")},
		{Name: "below", Work: shared.OptionUnlessIn("at", "below", "leans-to", "leans-away")},
		{Name: "eye-live", Work: shared.OptionUnlessIn("at", "eye-live", "leans-to", "leans-away")},
		{Name: "bar-middle", Work: shared.OptionUnlessIn("at", "bar-middle", "outside", "leans-to", "leans-away")},
		{Name: "raise", Work: shared.OptionUnlessIn("at", "raise", "leans-to", "outside", "inside")},
		{Name: "lower", Work: shared.OptionUnlessIn("at", "lower", "leans-away", "outside", "inside")},
		{Name: "turn-post", Work: shared.OptionUnlessIn("at", "turn-post", "outside", "inside")},
		{Name: "leave-it", Work: shared.OptionUnlessIn("at", "leave-it", "outside", "inside")},
	},
})
