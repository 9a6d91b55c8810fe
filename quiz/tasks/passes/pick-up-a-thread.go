package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "pick-up-a-thread", Stage: problem.Passes, Kind: answer.Order,
	Inputs:  []problem.Input{{Name: "reason", Symbol: "reason", Type: problem.InputWord, Words: []string{"reground", "new-tool", "part-back"}}},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituation("reason", calc.Outside, "reground", "new-tool", "part-back"),
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Order("gauge", "close", "take-up", "stop", "align", "zero", "go-on")
	},
	Errors: []problem.CommonError{
		{Name: "no-takeup", Work: shared.InOrder("gauge", "close", "stop", "align", "take-up", "zero", "go-on")},
		{Name: "open-align", Work: shared.InOrder("gauge", "align", "close", "take-up", "stop", "zero", "go-on")},
		{Name: "old-zero", Work: shared.InOrder("gauge", "close", "take-up", "stop", "zero", "align", "go-on")},
	},
})
