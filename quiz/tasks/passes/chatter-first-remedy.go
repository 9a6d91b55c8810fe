package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "chatter-first-remedy", Stage: problem.Passes, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "state", Symbol: "state", Type: problem.InputWord, Words: []string{"long-bar", "loose-slide", "fast", "heavy"}}},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituation("state", calc.Inside, "long-bar", "loose-slide", "fast", "heavy"),
	Work:    shared.Decide("state", map[string]string{"long-bar": "shorten", "loose-slide": "snug", "fast": "slower", "heavy": "lighter"}),
	Errors: []problem.CommonError{
		{Name: "deeper"},
		{Name: "faster"},
		{Name: "longer-bar"},
		{Name: "shorten", Work: shared.OptionUnlessIn("state", "shorten", "long-bar")},
		{Name: "snug", Work: shared.OptionUnlessIn("state", "snug", "loose-slide")},
	},
})
