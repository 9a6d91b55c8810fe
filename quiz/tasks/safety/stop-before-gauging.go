package safety

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "stop-before-gauging", Stage: problem.Safety, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "half-nut", Symbol: "half", Type: problem.InputWord, Words: []string{"open", "kept-closed"}}},
	Sources: []string{"common-practice", "shop-safety"},
	Draw:    shared.DrawSituation("half-nut", calc.Outside, "open", "kept-closed"),
	Work: func(v problem.Values) (problem.Working, error) {
		if v.Word("half-nut") == "open" {
			return v.Working().Choice("stop-back-open")
		}
		return v.Working().Choice("stop-back-closed")
	},
	Errors: []problem.CommonError{
		{Name: "slow-ok"},
		{Name: "hand-brake"},
		{Name: "tool-in"},
		{Name: "stop-back-open", Work: shared.OptionUnlessIn("half-nut", "stop-back-open", "open")},
	},
})
