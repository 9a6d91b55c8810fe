package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "no-cloth-on-turning-work", Stage: problem.Safety, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "need", Symbol: "need", Type: problem.InputWord, Words: []string{"burrs", "chip", "polish"}}},
	Sources: []string{"shop-safety"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("need", problem.Pick(d, "burrs", "chip", "polish"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Choice(map[string]string{
			"burrs": "stop-brush", "chip": "stop-hook", "polish": "ask-holder",
		}[v.Word("need")])
	},
	Errors: []problem.CommonError{
		{Name: "strip", Work: optionUnlessIn("need", "strip", "chip")},
		{Name: "rag-oil"},
		{Name: "glove"},
		{Name: "coast", Work: optionUnlessIn("need", "coast", "polish")},
		{Name: "pull-chip", Work: optionUnlessIn("need", "pull-chip", "burrs", "polish")},
		{Name: "short-strip", Work: optionUnlessIn("need", "short-strip", "burrs", "chip")},
	},
})
