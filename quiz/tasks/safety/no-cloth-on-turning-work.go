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
	Draw:    shared.DrawSituation("need", calc.Outside, "burrs", "chip", "polish"),
	Work: shared.Decide("need", map[string]string{
		"burrs": "stop-brush", "chip": "stop-hook", "polish": "ask-holder",
	}),
	Errors: []problem.CommonError{
		{Name: "strip", Work: shared.OptionUnlessIn("need", "strip", "chip")},
		{Name: "rag-oil"},
		{Name: "glove"},
		{Name: "coast", Work: shared.OptionUnlessIn("need", "coast", "polish")},
		{Name: "pull-chip", Work: shared.OptionUnlessIn("need", "pull-chip", "burrs", "polish")},
		{Name: "short-strip", Work: shared.OptionUnlessIn("need", "short-strip", "burrs", "chip")},
	},
})
