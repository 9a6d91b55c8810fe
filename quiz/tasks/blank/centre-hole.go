package blank

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "centre-hole", Stage: problem.Blank, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "found", Symbol: "found", Type: problem.InputWord, Words: []string{"shallow", "deep", "dirty", "twist", "snapped"}}},
	Sources: []string{"machine-shop-work", "tm-1-420", "common-practice"},
	Draw:    shared.DrawSituation("found", calc.Outside, "shallow", "deep", "dirty", "twist", "snapped"),
	Work: shared.Decide("found", map[string]string{
		"shallow": "drill-on", "deep": "face-back", "dirty": "clear-it", "twist": "sixty", "snapped": "faster",
	}),
	Errors: []problem.CommonError{
		// What mends one hole would mend another as well: then it is not offered there.
		{Name: "drill-on", Work: shared.OptionUnlessIn("found", "drill-on", "shallow", "twist", "snapped")},
		{Name: "face-back", Work: shared.OptionUnlessIn("found", "face-back", "deep", "twist", "shallow", "snapped")},
		{Name: "clear-it", Work: shared.OptionUnlessIn("found", "clear-it", "dirty", "snapped")},
		{Name: "sixty", Work: shared.OptionUnlessIn("found", "sixty", "twist", "shallow", "deep", "snapped")},
		{Name: "press", Work: shared.OptionUnlessIn("found", "press", "snapped")},
		{Name: "wears-in", Work: shared.OptionUnlessIn("found", "wears-in", "snapped")},
		{Name: "slower", Work: shared.OptionUnlessIn("found", "slower", "shallow", "deep", "dirty", "twist")},
		{Name: "firm-feed", Work: shared.OptionUnlessIn("found", "firm-feed", "shallow", "deep", "dirty", "twist")},
		{Name: "stick-out", Work: shared.OptionUnlessIn("found", "stick-out", "shallow", "deep", "dirty", "twist")},
	},
})
