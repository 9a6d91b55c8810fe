package setup

import (
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "lead-screw-direction", Stage: problem.SetUp, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  shared.Handed,
	Sources: []string{"geometry", "common-practice"},
	Draw:    shared.DrawHanded,
	Work: shared.Decide("kind", map[string]string{
		"outside-right": "to-headstock", "outside-left": "to-tailstock", "inside-right": "to-headstock", "inside-left": "to-tailstock",
	}),
	Errors: []problem.CommonError{
		{Name: "same", Work: shared.OptionUnlessIn("kind", "same", "outside-right", "inside-right")},
		{Name: "to-tailstock", Work: shared.OptionUnlessIn("kind", "to-tailstock", "outside-left", "inside-left")},
		{Name: "rev-spindle"},
		{Name: "flip-tool"},
		{Name: "tool-decides"},
	},
})
