package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "chatter-first-remedy", Stage: quiz.Passes,
	Inputs:  []quiz.Input{{Name: "state", Symbol: "state", Is: quiz.AWord, Words: []string{"long-bar", "loose-slide", "fast", "heavy"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("state", quiz.Pick(d, "long-bar", "loose-slide", "fast", "heavy"))
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"long-bar": "shorten", "loose-slide": "snug", "fast": "slower", "heavy": "lighter"}[v.Word("state")])
	},
	Slips: []quiz.Slip{
		{Name: "deeper"},
		{Name: "faster"},
		{Name: "longer-bar"},
		{Name: "shorten", Work: optionUnlessIn("state", "shorten", "long-bar")},
		{Name: "snug", Work: optionUnlessIn("state", "snug", "loose-slide")},
	},
})
