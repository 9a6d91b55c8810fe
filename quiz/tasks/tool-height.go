package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "tool-height", Stage: quiz.Blank,
	Inputs:  []quiz.Input{{Name: "at", Symbol: "at", Is: quiz.AWord, Words: []string{"outside", "inside", "leans-to", "leans-away"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		at := quiz.Pick(d, "outside", "inside", "leans-to", "leans-away")
		v.SetWord("at", at)
		d.Job(&v, map[bool]calc.Side{true: calc.Inside, false: calc.Outside}[at == "inside"])
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		return v.Working().Choice(map[string]string{
			"outside": "on-centre", "inside": "on-centre", "leans-to": "raise", "leans-away": "lower",
		}[v.Word("at")])
	},
	Slips: []quiz.Slip{
		// Some books set a boring tool a little high: no wrong option for inside threads.
		{Name: "above", Work: optionUnlessIn("at", "above", "inside", "leans-to", "leans-away")},
		{Name: "below", Work: optionUnlessIn("at", "below", "leans-to", "leans-away")},
		{Name: "eye-live", Work: optionUnlessIn("at", "eye-live", "leans-to", "leans-away")},
		{Name: "bar-middle", Work: optionUnlessIn("at", "bar-middle", "outside", "leans-to", "leans-away")},
		{Name: "raise", Work: optionUnlessIn("at", "raise", "leans-to", "outside", "inside")},
		{Name: "lower", Work: optionUnlessIn("at", "lower", "leans-away", "outside", "inside")},
		{Name: "turn-post", Work: optionUnlessIn("at", "turn-post", "outside", "inside")},
		{Name: "leave-it", Work: optionUnlessIn("at", "leave-it", "outside", "inside")},
	},
})
