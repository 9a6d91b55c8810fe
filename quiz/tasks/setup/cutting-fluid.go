package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "cutting-fluid", Stage: problem.SetUp, Kind: answer.Choice, SafetyCritical: true,
	Inputs: []problem.Input{{Name: "metal", Symbol: "metal", Type: problem.InputWord,
		Words: []string{"steel", "stainless", "cast-iron", "aluminium", "magnesium"}}},
	Sources: []string{"handbook-fluids", "ordnance", "jones-1914", "magnesium", "common-practice"},
	Draw:    shared.DrawSituation("metal", calc.Outside, "steel", "stainless", "cast-iron", "aluminium", "magnesium"),
	Work: shared.Decide("metal", map[string]string{
		"steel": "cutting-oil", "stainless": "rich-oil", "cast-iron": "dry", "aluminium": "light-oil", "magnesium": "ask",
	}),
	Errors: []problem.CommonError{
		{Name: "cutting-oil", Work: shared.OptionUnlessIn("metal", "cutting-oil", "steel", "stainless", "aluminium")},
		{Name: "rich-oil", Work: shared.OptionUnlessIn("metal", "rich-oil", "stainless", "steel", "magnesium")},
		{Name: "dry", Work: shared.OptionUnlessIn("metal", "dry", "cast-iron", "magnesium")},
		{Name: "light-oil", Work: shared.OptionUnlessIn("metal", "light-oil", "aluminium", "steel", "magnesium")},
		{Name: "plain-water"},
		{Name: "way-oil", Work: shared.OptionUnlessIn("metal", "way-oil", "magnesium")},
		{Name: "water-mix", Work: shared.OptionUnlessIn("metal", "water-mix", "steel", "stainless", "aluminium", "cast-iron")},
		{Name: "hold-cloth", Work: shared.OptionUnlessIn("metal", "hold-cloth", "magnesium")},
	},
})
