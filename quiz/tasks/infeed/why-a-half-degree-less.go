package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "why-a-half-degree-less", Stage: problem.Infeed, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "feed", Symbol: "feed", Type: problem.InputWord, Words: []string{"less", "equal", "more", "straight"}}},
	Sources: []string{"common-practice", "geometry"},
	Draw:    shared.DrawSituation("feed", calc.Outside, "less", "equal", "more", "straight"),
	Work:    shared.Decide("feed", map[string]string{"less": "skim", "equal": "one-only", "more": "steps", "straight": "both-alike"}),
	Errors: []problem.CommonError{
		{Name: "leading", Work: shared.OptionUnlessIn("feed", "leading", "straight")},
		{Name: "neither", Work: shared.OptionUnlessIn("feed", "neither", "straight")},
		{Name: "depth", Work: shared.OptionUnlessIn("feed", "depth", "equal", "straight")},
		{Name: "skim", Work: shared.OptionUnlessIn("feed", "skim", "less", "equal")},
		{Name: "one-only", Work: shared.OptionUnlessIn("feed", "one-only", "less", "equal", "more")},
		{Name: "steps", Work: shared.OptionUnlessIn("feed", "steps", "equal", "more")},
		{Name: "both-alike", Work: shared.OptionUnlessIn("feed", "both-alike", "straight")},
	},
})
