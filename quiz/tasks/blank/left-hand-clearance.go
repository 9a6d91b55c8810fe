package blank

import (
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "left-hand-clearance", Stage: problem.Blank, Kind: answer.Choice,
	Inputs:  shared.Handed,
	Sources: []string{"geometry", "common-practice"},
	Draw:    shared.DrawHanded,
	Work: shared.Decide("kind", map[string]string{
		"outside-right": "left-side", "outside-left": "right-side", "inside-right": "left-side", "inside-left": "right-side",
	}),
	Errors: []problem.CommonError{
		{Name: "same", Work: shared.OptionUnlessIn("kind", "same", "outside-right", "inside-right")},
		{Name: "right-side", Work: shared.OptionUnlessIn("kind", "right-side", "outside-left", "inside-left")},
		{Name: "both"},
		{Name: "none"},
	},
})
