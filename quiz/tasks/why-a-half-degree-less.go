package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "why-a-half-degree-less", Stage: quiz.Infeed,
	Inputs:  []quiz.Input{{Name: "feed", Symbol: "feed", Is: quiz.AWord, Words: []string{"less", "equal", "more", "straight"}}},
	Sources: []string{"common-practice", "geometry"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("feed", quiz.Pick(d, "less", "equal", "more", "straight"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"less": "skim", "equal": "one-only", "more": "steps", "straight": "both-alike"}[v.Word("feed")])
	},
	Slips: []quiz.Slip{
		{Name: "leading", Work: optionUnlessIn("feed", "leading", "straight")},
		{Name: "neither", Work: optionUnlessIn("feed", "neither", "straight")},
		{Name: "depth", Work: optionUnlessIn("feed", "depth", "equal", "straight")},
		{Name: "skim", Work: optionUnlessIn("feed", "skim", "less", "equal")},
		{Name: "one-only", Work: optionUnlessIn("feed", "one-only", "less", "equal", "more")},
		{Name: "steps", Work: optionUnlessIn("feed", "steps", "equal", "more")},
		{Name: "both-alike", Work: optionUnlessIn("feed", "both-alike", "straight")},
	},
})
