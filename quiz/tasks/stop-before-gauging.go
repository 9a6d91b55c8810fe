package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "stop-before-gauging", Stage: quiz.Safety, Gate: true,
	Inputs:  []quiz.Input{{Name: "half-nut", Symbol: "half", Is: quiz.AWord, Words: []string{"open", "kept-closed"}}},
	Sources: []string{"common-practice", "shop-safety"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("half-nut", quiz.Pick(d, "open", "kept-closed"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if v.Word("half-nut") == "open" {
			return v.Working().Choice("stop-back-open")
		}
		return v.Working().Choice("stop-back-closed")
	},
	Slips: []quiz.Slip{
		{Name: "slow-ok"},
		{Name: "hand-brake"},
		{Name: "tool-in"},
		{Name: "stop-back-open", Work: optionUnlessIn("half-nut", "stop-back-open", "open")},
	},
})
