package safety

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
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
		{Name: "strip", Work: shared.OptionUnlessIn("need", "strip", "chip")},
		{Name: "rag-oil"},
		{Name: "glove"},
		{Name: "coast", Work: shared.OptionUnlessIn("need", "coast", "polish")},
		{Name: "pull-chip", Work: shared.OptionUnlessIn("need", "pull-chip", "burrs", "polish")},
		{Name: "short-strip", Work: shared.OptionUnlessIn("need", "short-strip", "burrs", "chip")},
	},
})
