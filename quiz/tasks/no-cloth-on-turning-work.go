package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "no-cloth-on-turning-work", Stage: quiz.Safety, Gate: true,
	Inputs:  []quiz.Input{{Name: "need", Symbol: "need", Is: quiz.AWord, Words: []string{"burrs", "chip", "polish"}}},
	Sources: []string{"shop-safety"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("need", quiz.Pick(d, "burrs", "chip", "polish"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		return v.Working().Choice(map[string]string{
			"burrs": "stop-brush", "chip": "stop-hook", "polish": "ask-holder",
		}[v.Word("need")])
	},
	Slips: []quiz.Slip{
		{Name: "strip", Work: optionUnlessIn("need", "strip", "chip")},
		{Name: "rag-oil"},
		{Name: "glove"},
		{Name: "coast", Work: optionUnlessIn("need", "coast", "polish")},
		{Name: "pull-chip", Work: optionUnlessIn("need", "pull-chip", "burrs", "polish")},
		{Name: "short-strip", Work: optionUnlessIn("need", "short-strip", "burrs", "chip")},
	},
})
