package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "withdraw-inside", Stage: quiz.Passes, Gate: true,
	Inputs:  []quiz.Input{{Name: "wall", Symbol: "wall", Is: quiz.AWord, Words: []string{"near", "far", "outside"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		wall := quiz.Pick(d, "near", "far", "outside")
		v.SetWord("wall", wall)
		side := calc.Inside
		if wall == "outside" {
			side = calc.Outside
		}
		d.Job(&v, side)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"near": "to-middle", "far": "to-middle", "outside": "outward"}[v.Word("wall")])
	},
	Slips: []quiz.Slip{
		{Name: "outward", Work: optionUnlessIn("wall", "outward", "far", "outside")},
		{Name: "away", Work: optionUnlessIn("wall", "away", "near")},
		{Name: "carriage"},
		{Name: "too-far", Work: optionUnlessIn("wall", "too-far", "outside")},
		{Name: "stays"},
	},
})
