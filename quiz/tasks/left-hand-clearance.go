package tasks

import (
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "left-hand-clearance", Stage: problem.Blank, Kind: answer.Choice,
	Inputs:  handed,
	Sources: []string{"geometry", "common-practice"},
	Draw:    drawHanded,
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Choice(map[string]string{
			"outside-right": "left-side", "outside-left": "right-side", "inside-right": "left-side", "inside-left": "right-side",
		}[v.Word("kind")])
	},
	Errors: []problem.CommonError{
		{Name: "same", Work: optionUnlessIn("kind", "same", "outside-right", "inside-right")},
		{Name: "right-side", Work: optionUnlessIn("kind", "right-side", "outside-left", "inside-left")},
		{Name: "both"},
		{Name: "none"},
	},
})
