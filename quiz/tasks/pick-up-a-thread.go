package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "pick-up-a-thread", Stage: quiz.Passes,
	Inputs:  []quiz.Input{{Name: "reason", Symbol: "reason", Is: quiz.AWord, Words: []string{"reground", "new-tool", "part-back"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("reason", quiz.Pick(d, "reground", "new-tool", "part-back"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		return v.Working().Order("gauge", "close", "take-up", "stop", "align", "zero", "go-on")
	},
	Slips: []quiz.Slip{
		{Name: "no-takeup", Work: inOrder("gauge", "close", "stop", "align", "take-up", "zero", "go-on")},
		{Name: "open-align", Work: inOrder("gauge", "align", "close", "take-up", "stop", "zero", "go-on")},
		{Name: "old-zero", Work: inOrder("gauge", "close", "take-up", "stop", "zero", "align", "go-on")},
	},
})
