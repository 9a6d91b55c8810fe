package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "tight-all-the-way", Stage: quiz.Fitting,
	Inputs:  []quiz.Input{{Name: "found", Symbol: "found", Is: quiz.AWord, Words: []string{"nothing-yet", "burrs", "tighter", "one-flank"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("found", quiz.Pick(d, "nothing-yet", "burrs", "tighter", "one-flank"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"nothing-yet": "look", "burrs": "dress", "tighter": "pitch", "one-flank": "square"}[v.Word("found")])
	},
	Slips: []quiz.Slip{
		{Name: "cut-more"},
		{Name: "oil"},
		{Name: "wire"},
		{Name: "dress", Work: optionUnlessIn("found", "dress", "nothing-yet", "burrs")},
		{Name: "square", Work: optionUnlessIn("found", "square", "nothing-yet", "one-flank", "burrs")},
	},
})
