package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "half-nut-kept-closed", Stage: quiz.Passes, Gate: true,
	Inputs:  []quiz.Input{{Name: "reason", Symbol: "reason", Is: quiz.AWord, Words: []string{"metric-on-inch", "inch-on-metric", "no-dial"}}},
	Sources: []string{"common-practice", "shop-safety"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("reason", quiz.Pick(d, "metric-on-inch", "inch-on-metric", "no-dial"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		return v.Working().Order("withdraw", "stop", "reverse", "stop-again", "set-last", "last-pass", "open")
	},
	Slips: []quiz.Slip{
		{Name: "rev-tool-in", Work: inOrder("stop", "reverse", "stop-again", "withdraw", "set-last", "last-pass", "open")},
		{Name: "open", Work: inOrder("withdraw", "open", "stop", "reverse", "stop-again", "set-last", "last-pass")},
		{Name: "stop-late", Work: inOrder("withdraw", "reverse", "stop", "stop-again", "set-last", "last-pass", "open")},
		{Name: "stop-in-cut", Work: inOrder("stop", "withdraw", "reverse", "stop-again", "set-last", "last-pass", "open")},
		{Name: "set-early", Work: inOrder("withdraw", "stop", "set-last", "reverse", "stop-again", "last-pass", "open")},
	},
})
