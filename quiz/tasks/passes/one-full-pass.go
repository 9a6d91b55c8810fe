package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// onePass is the order of one pass by the compound method, half-nut opened.
var onePass = []string{"add-infeed", "wait-line", "close", "withdraw", "open", "wind-back", "to-zero"}

var _ = shared.Register(problem.Task{
	Name: "one-full-pass", Stage: problem.Passes, Kind: answer.Order, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "side", Symbol: "side", Type: problem.InputWord, Words: []string{"outside", "inside"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		side := problem.Pick(d, calc.Outside, calc.Inside)
		v.SetWord("side", side.String())
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) { return v.Working().Order(onePass...) },
	Errors: []problem.CommonError{
		{Name: "open-first", Work: shared.InOrder("add-infeed", "wait-line", "close", "open", "withdraw", "wind-back", "to-zero")},
		{Name: "return-in", Work: shared.InOrder("add-infeed", "wait-line", "close", "open", "wind-back", "withdraw", "to-zero")},
		{Name: "infeed-early", Work: shared.InOrder("wait-line", "close", "withdraw", "open", "wind-back", "add-infeed", "to-zero")},
		{Name: "zero-first", Work: shared.InOrder("add-infeed", "wait-line", "close", "withdraw", "open", "to-zero", "wind-back")},
		{Name: "no-wait", Work: shared.InOrder("add-infeed", "close", "wait-line", "withdraw", "open", "wind-back", "to-zero")},
	},
})
