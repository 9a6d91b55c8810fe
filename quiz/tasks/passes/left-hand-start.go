package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "left-hand-start", Stage: problem.Passes, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "thread", Symbol: "thread", Type: problem.InputWord, Words: []string{"left-groove", "left-solid", "right"}}},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituation("thread", calc.Outside, "left-groove", "left-solid", "right"),
	Work:    shared.Decide("thread", map[string]string{"left-groove": "groove", "left-solid": "groove-first", "right": "free-end"}),
	Errors: []problem.CommonError{
		{Name: "free-end", Work: shared.OptionUnlessIn("thread", "free-end", "right")},
		{Name: "no-groove", Work: shared.OptionUnlessIn("thread", "no-groove", "right")},
		{Name: "reversed-spindle"},
		{Name: "into-shoulder", Work: shared.OptionUnlessIn("thread", "into-shoulder", "left-solid")},
		{Name: "groove", Work: shared.OptionUnlessIn("thread", "groove", "left-groove", "left-solid")},
	},
})
