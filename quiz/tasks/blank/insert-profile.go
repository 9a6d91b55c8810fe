package blank

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "insert-profile", Stage: problem.Blank, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "asked", Symbol: "asked", Type: problem.InputWord,
		Words: []string{"many-alike", "many-pitches", "blank-partial", "blank-full", "depth-partial"}}},
	Sources: []string{"insert-makers", "geometry"},
	Draw:    shared.DrawSituation("asked", calc.Outside, "many-alike", "many-pitches", "blank-partial", "blank-full", "depth-partial"),
	Work: shared.Decide("asked", map[string]string{
		"many-alike": "full", "many-pitches": "partial", "blank-partial": "to-size", "blank-full": "little-over", "depth-partial": "deeper",
	}),
	Errors: []problem.CommonError{
		{Name: "full", Work: shared.OptionUnlessIn("asked", "full", "many-alike", "blank-partial", "blank-full", "depth-partial")},
		{Name: "partial", Work: shared.OptionUnlessIn("asked", "partial", "many-pitches", "blank-partial", "blank-full", "depth-partial")},
		{Name: "coarse-full", Work: shared.OptionUnlessIn("asked", "coarse-full", "blank-partial", "blank-full", "depth-partial")},
		{Name: "either", Work: shared.OptionUnlessIn("asked", "either", "blank-partial", "blank-full", "depth-partial")},
		{Name: "to-size", Work: shared.OptionUnlessIn("asked", "to-size", "blank-partial", "many-alike", "many-pitches", "depth-partial")},
		{Name: "little-over", Work: shared.OptionUnlessIn("asked", "little-over", "blank-full", "many-alike", "many-pitches", "depth-partial")},
		{Name: "under", Work: shared.OptionUnlessIn("asked", "under", "many-alike", "many-pitches", "depth-partial")},
		{Name: "as-bar", Work: shared.OptionUnlessIn("asked", "as-bar", "many-alike", "many-pitches", "depth-partial")},
		{Name: "same-depth", Work: shared.OptionUnlessIn("asked", "same-depth", "many-alike", "many-pitches", "blank-partial", "blank-full")},
		{Name: "less-deep", Work: shared.OptionUnlessIn("asked", "less-deep", "many-alike", "many-pitches", "blank-partial", "blank-full")},
		{Name: "until-crest", Work: shared.OptionUnlessIn("asked", "until-crest", "many-alike", "many-pitches", "blank-partial", "blank-full")},
	},
})
