package tasks

import (
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "compound-swing-side", Stage: problem.SetUp, Kind: answer.Choice,
	Inputs:  handed,
	Sources: []string{"geometry", "common-practice"},
	Draw:    drawHanded,
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Choice(map[string]string{
			"outside-right": "tailstock", "outside-left": "headstock", "inside-right": "headstock", "inside-left": "tailstock",
		}[v.Word("kind")])
	},
	Errors: []problem.CommonError{
		// Each of these three is the swing to the wrong side, for another reason.
		{Name: "other-side", Work: optionUnlessIn("kind", "other-side", "outside-left", "inside-right")},
		{Name: "lh-same", Work: optionUnlessIn("kind", "lh-same", "outside-right", "inside-right", "inside-left")},
		{Name: "inside-same", Work: optionUnlessIn("kind", "inside-same", "outside-right", "outside-left", "inside-left")},
		{Name: "straight"},
		{Name: "either-side"},
		{Name: "whole-angle"},
	},
})
