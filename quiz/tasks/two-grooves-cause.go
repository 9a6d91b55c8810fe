package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "two-grooves-cause", Stage: quiz.Fitting,
	Inputs:  []quiz.Input{{Name: "sign", Symbol: "sign", Is: quiz.AWord, Words: []string{"two", "two-metric", "torn", "long"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("sign", quiz.Pick(d, "two", "two-metric", "torn", "long"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"two": "wrong-line", "two-metric": "was-opened", "torn": "blunt", "long": "gears"}[v.Word("sign")])
	},
	Slips: []quiz.Slip{
		{Name: "blunt", Work: optionUnlessIn("sign", "blunt", "torn")},
		{Name: "speed"},
		{Name: "depth"},
		{Name: "wrong-line", Work: optionUnlessIn("sign", "wrong-line", "two", "two-metric")},
		{Name: "gears", Work: optionUnlessIn("sign", "gears", "two", "two-metric", "long")},
	},
})
