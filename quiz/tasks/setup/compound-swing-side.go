package setup

import (
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "compound-swing-side", Stage: problem.SetUp, Kind: answer.Choice,
	Inputs:  shared.Handed,
	Sources: []string{"geometry", "common-practice"},
	Draw:    shared.DrawHanded,
	Work: shared.Decide("kind", map[string]string{
		"outside-right": "tailstock", "outside-left": "headstock", "inside-right": "headstock", "inside-left": "tailstock",
	}),
	Errors: []problem.CommonError{
		// Each of these three is the swing to the wrong side, for another reason.
		{Name: "other-side", Work: shared.OptionUnlessIn("kind", "other-side", "outside-left", "inside-right")},
		{Name: "lh-same", Work: shared.OptionUnlessIn("kind", "lh-same", "outside-right", "inside-right", "inside-left")},
		{Name: "inside-same", Work: shared.OptionUnlessIn("kind", "inside-same", "outside-right", "outside-left", "inside-left")},
		{Name: "straight"},
		{Name: "either-side"},
		{Name: "whole-angle"},
	},
})
