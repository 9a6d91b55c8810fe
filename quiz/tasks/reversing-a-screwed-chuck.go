package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "reversing-a-screwed-chuck", Stage: quiz.Safety, Gate: true,
	Inputs:  []quiz.Input{{Name: "nose", Symbol: "nose", Is: quiz.AWord, Words: []string{"screwed", "screwed-line", "locked"}}},
	Sources: []string{"shop-safety"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("nose", quiz.Pick(d, "screwed", "screwed", "screwed-line", "locked"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		return v.Working().Choice(map[string]string{
			"screwed": "another-way", "screwed-line": "open-half-nut", "locked": "reverse-locked",
		}[v.Word("nose")])
	},
	Slips: []quiz.Slip{
		{Name: "fine-slow", Work: optionUnlessIn("nose", "fine-slow", "locked")},
		{Name: "tight", Work: optionUnlessIn("nose", "tight", "locked")},
		{Name: "lh-only", Work: optionUnlessIn("nose", "lh-only", "locked")},
		{Name: "open-half-nut", Work: optionUnlessIn("nose", "open-half-nut", "screwed-line")},
		{Name: "tool-in", Work: optionUnlessIn("nose", "tool-in", "screwed", "screwed-line")},
		{Name: "on-the-run", Work: optionUnlessIn("nose", "on-the-run", "screwed")},
	},
})
