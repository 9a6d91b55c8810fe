package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "half-nut-kept-closed", Stage: problem.Passes, Kind: answer.Order, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "reason", Symbol: "reason", Type: problem.InputWord, Words: []string{"metric-on-inch", "inch-on-metric", "no-dial"}}},
	Sources: []string{"common-practice", "shop-safety"},
	Draw:    shared.DrawSituation("reason", calc.Outside, "metric-on-inch", "inch-on-metric", "no-dial"),
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Order("withdraw", "stop", "reverse", "stop-again", "set-last", "last-pass", "open")
	},
	Errors: []problem.CommonError{
		{Name: "rev-tool-in", Work: shared.InOrder("stop", "reverse", "stop-again", "withdraw", "set-last", "last-pass", "open")},
		{Name: "open", Work: shared.InOrder("withdraw", "open", "stop", "reverse", "stop-again", "set-last", "last-pass")},
		{Name: "stop-late", Work: shared.InOrder("withdraw", "reverse", "stop", "stop-again", "set-last", "last-pass", "open")},
		{Name: "stop-in-cut", Work: shared.InOrder("stop", "withdraw", "reverse", "stop-again", "set-last", "last-pass", "open")},
		{Name: "set-early", Work: shared.InOrder("withdraw", "stop", "set-last", "reverse", "stop-again", "last-pass", "open")},
	},
})
