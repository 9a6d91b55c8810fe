package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "left-hand-start", Stage: quiz.Passes, Gate: true,
	Inputs:  []quiz.Input{{Name: "thread", Symbol: "thread", Is: quiz.AWord, Words: []string{"left-groove", "left-solid", "right"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("thread", quiz.Pick(d, "left-groove", "left-solid", "right"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"left-groove": "groove", "left-solid": "groove-first", "right": "free-end"}[v.Word("thread")])
	},
	Slips: []quiz.Slip{
		{Name: "free-end", Work: optionUnlessIn("thread", "free-end", "right")},
		{Name: "no-groove", Work: optionUnlessIn("thread", "no-groove", "right")},
		{Name: "reversed-spindle"},
		{Name: "into-shoulder", Work: optionUnlessIn("thread", "into-shoulder", "left-solid")},
		{Name: "groove", Work: optionUnlessIn("thread", "groove", "left-groove", "left-solid")},
	},
})
