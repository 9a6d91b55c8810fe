package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "tight-all-the-way", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "found", Symbol: "found", Type: problem.InputWord, Words: []string{"nothing-yet", "burrs", "tighter", "one-flank"}}},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituation("found", calc.Outside, "nothing-yet", "burrs", "tighter", "one-flank"),
	Work:    shared.Decide("found", map[string]string{"nothing-yet": "look", "burrs": "dress", "tighter": "pitch", "one-flank": "square"}),
	Errors: []problem.CommonError{
		{Name: "cut-more"},
		{Name: "oil"},
		{Name: "wire"},
		{Name: "dress", Work: shared.OptionUnlessIn("found", "dress", "nothing-yet", "burrs")},
		{Name: "square", Work: shared.OptionUnlessIn("found", "square", "nothing-yet", "one-flank", "burrs")},
	},
})
