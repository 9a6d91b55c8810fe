package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "square-the-tool", Stage: quiz.Blank,
	Inputs:  []quiz.Input{{Name: "found", Symbol: "found", Is: quiz.AWord, Words: []string{"compound", "toolpost", "chuck", "ground"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("found", quiz.Pick(d, "compound", "toolpost", "chuck", "ground"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		return v.Working().Choice(v.Word("found"))
	},
	Slips: []quiz.Slip{
		{Name: "compound", Work: optionUnlessIn("found", "compound", "compound")},
		{Name: "toolpost", Work: optionUnlessIn("found", "toolpost", "toolpost")},
		{Name: "chuck", Work: optionUnlessIn("found", "chuck", "chuck")},
		{Name: "ground", Work: optionUnlessIn("found", "ground", "ground")},
		{Name: "half-degree"},
	},
})
