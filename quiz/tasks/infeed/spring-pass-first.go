package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "spring-pass-first", Stage: problem.Infeed, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "nut", Symbol: "nut", Type: problem.InputWord, Words: []string{"drags", "springs-done", "free"}}},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituation("nut", calc.Outside, "drags", "springs-done", "free"),
	Work:    shared.Decide("nut", map[string]string{"drags": "springs", "springs-done": "one-line", "free": "done"}),
	Errors: []problem.CommonError{
		{Name: "full-cut"},
		{Name: "file"},
		{Name: "force", Work: shared.OptionUnlessIn("nut", "force", "free")},
		{Name: "springs", Work: shared.OptionUnlessIn("nut", "springs", "drags")},
		{Name: "one-line", Work: shared.OptionUnlessIn("nut", "one-line", "drags", "springs-done")},
		{Name: "done", Work: shared.OptionUnlessIn("nut", "done", "free", "springs-done")},
	},
})
