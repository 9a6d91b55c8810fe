package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "go-and-not-go", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs: []problem.Input{
		{Name: "rings", Symbol: "rings", Type: problem.InputWord, Words: []string{"go-only", "both", "neither"}},
		{Name: "allowed", Symbol: "allowed", Type: problem.InputCount, Low: 1, High: 3},
		{Name: "turns", Symbol: "turns", Type: problem.InputCount, Low: 1, High: 20},
	},
	Sources: []string{"common-practice", "b1-2"},
	Draw: shared.DrawSituationWith("rings", calc.Outside, func(d *problem.Draw, v *problem.Values) {
		v.Set("allowed", float64(d.Between(2, 3)))
		v.Set("turns", float64(d.Between(5, 8)))
	}, "go-only", "both", "neither"),
	Work: shared.Decide("rings", map[string]string{"go-only": "pass", "both": "reject", "neither": "try-more"}),
	Errors: []problem.CommonError{
		{Name: "both-good", Work: shared.OptionUnlessIn("rings", "both-good", "go-only", "neither")},
		{Name: "swap", Work: shared.OptionUnlessIn("rings", "swap", "both", "neither")},
		{Name: "try-more", Work: shared.OptionUnlessIn("rings", "try-more", "neither")},
		{Name: "reject", Work: shared.OptionUnlessIn("rings", "reject", "both")},
		{Name: "near-enough", Work: shared.OptionUnlessIn("rings", "near-enough", "go-only", "neither")},
		{Name: "until-both", Work: shared.OptionUnlessIn("rings", "until-both", "both", "neither")},
		{Name: "pass-it", Work: shared.OptionUnlessIn("rings", "pass-it", "go-only", "both")},
		{Name: "force-go", Work: shared.OptionUnlessIn("rings", "force-go", "go-only", "both")},
	},
})
