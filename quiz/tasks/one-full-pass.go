package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

// onePass is the order of one pass by the compound method, half-nut opened.
var onePass = []string{"add-infeed", "wait-line", "close", "withdraw", "open", "wind-back", "to-zero"}

var _ = register(quiz.Task{
	Name: "one-full-pass", Stage: quiz.Passes, Gate: true,
	Inputs:  []quiz.Input{{Name: "side", Symbol: "side", Is: quiz.AWord, Words: []string{"outside", "inside"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		side := quiz.Pick(d, calc.Outside, calc.Inside)
		v.SetWord("side", side.String())
		d.Job(&v, side)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) { return v.Working().Order(onePass...) },
	Slips: []quiz.Slip{
		{Name: "open-first", Work: inOrder("add-infeed", "wait-line", "close", "open", "withdraw", "wind-back", "to-zero")},
		{Name: "return-in", Work: inOrder("add-infeed", "wait-line", "close", "open", "wind-back", "withdraw", "to-zero")},
		{Name: "infeed-early", Work: inOrder("wait-line", "close", "withdraw", "open", "wind-back", "add-infeed", "to-zero")},
		{Name: "zero-first", Work: inOrder("add-infeed", "wait-line", "close", "withdraw", "open", "to-zero", "wind-back")},
		{Name: "no-wait", Work: inOrder("add-infeed", "close", "wait-line", "withdraw", "open", "wind-back", "to-zero")},
	},
})

// inOrder is the slip of another order.
func inOrder(keys ...string) func(quiz.Values) quiz.Reply {
	return func(quiz.Values) quiz.Reply { return quiz.Keys(keys...) }
}
