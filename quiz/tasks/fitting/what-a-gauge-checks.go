package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "what-a-gauge-checks", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "wanted", Symbol: "wanted", Type: problem.InputWord,
		Words: []string{"crest", "bore", "too-thin", "goes-together", "how-much"}}},
	Sources: []string{"gauge-makers", "b1-2", "common-practice"},
	Draw:    shared.DrawSituation("wanted", calc.Outside, "crest", "bore", "too-thin", "goes-together", "how-much"),
	Work: shared.Decide("wanted", map[string]string{
		"crest": "plain-micrometer", "bore": "plain-plug", "too-thin": "not-go", "goes-together": "go", "how-much": "wires",
	}),
	Errors: []problem.CommonError{
		{Name: "plain-micrometer", Work: shared.OptionUnlessIn("wanted", "plain-micrometer", "crest", "bore")},
		{Name: "plain-plug", Work: shared.OptionUnlessIn("wanted", "plain-plug", "bore", "too-thin", "goes-together", "how-much")},
		{Name: "not-go", Work: shared.OptionUnlessIn("wanted", "not-go", "too-thin")},
		{Name: "go", Work: shared.OptionUnlessIn("wanted", "go", "goes-together")},
		{Name: "wires", Work: shared.OptionUnlessIn("wanted", "wires", "how-much", "too-thin", "bore")},
		{Name: "pitch-blade"},
	},
})
