package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "inside-thread-done", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "gauges", Symbol: "gauges", Type: problem.InputWord, Words: []string{"not-yet", "go-only", "neither", "both"}}},
	Sources: []string{"common-practice", "b1-2"},
	Draw:    shared.DrawSituation("gauges", calc.Inside, "not-yet", "go-only", "neither", "both"),
	Work: shared.Decide("gauges", map[string]string{
		"not-yet": "stop-short-and-try", "go-only": "done", "neither": "a-little-more", "both": "reject",
	}),
	Errors: []problem.CommonError{
		{Name: "depth-only"},
		{Name: "wires"},
		{Name: "not-go-enters"},
		{Name: "stop-short-and-try", Work: shared.OptionUnlessIn("gauges", "stop-short-and-try", "not-yet", "neither")},
		{Name: "done", Work: shared.OptionUnlessIn("gauges", "done", "go-only")},
		{Name: "a-little-more", Work: shared.OptionUnlessIn("gauges", "a-little-more", "neither", "not-yet")},
		{Name: "reject", Work: shared.OptionUnlessIn("gauges", "reject", "both")},
	},
})
