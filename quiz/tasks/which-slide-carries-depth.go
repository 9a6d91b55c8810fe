package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "which-slide-carries-depth", Stage: quiz.Infeed, Gate: true,
	Inputs:  []quiz.Input{{Name: "phase", Symbol: "phase", Is: quiz.AWord, Words: []string{"roughing", "finishing"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("phase", quiz.Pick(d, "roughing", "finishing"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if v.Word("phase") == "finishing" {
			return v.Working().Choice("cross-to-sum")
		}
		return v.Working().Choice("cross-zero-compound-in")
	},
	Slips: []quiz.Slip{
		{Name: "cross-in", Work: optionUnlessIn("phase", "cross-in", "finishing")},
		{Name: "both"},
		{Name: "compound-out"},
		{Name: "cross-zero-compound-in", Work: optionUnlessIn("phase", "cross-zero-compound-in", "roughing")},
	},
})
