package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "spring-pass-first", Stage: quiz.Infeed,
	Inputs:  []quiz.Input{{Name: "nut", Symbol: "nut", Is: quiz.AWord, Words: []string{"drags", "springs-done", "free"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("nut", quiz.Pick(d, "drags", "springs-done", "free"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"drags": "springs", "springs-done": "one-line", "free": "done"}[v.Word("nut")])
	},
	Slips: []quiz.Slip{
		{Name: "full-cut"},
		{Name: "file"},
		{Name: "force", Work: optionUnlessIn("nut", "force", "free")},
		{Name: "springs", Work: optionUnlessIn("nut", "springs", "drags")},
		{Name: "one-line", Work: optionUnlessIn("nut", "one-line", "drags", "springs-done")},
		{Name: "done", Work: optionUnlessIn("nut", "done", "free", "springs-done")},
	},
})
