package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "away-from-the-shoulder", Stage: problem.Passes, Kind: answer.Choice, SafetyCritical: true,
	Inputs: []problem.Input{{Name: "setup", Symbol: "setup", Type: problem.InputWord,
		Words: []string{"screwed", "right-way-up", "no-groove", "lever-over", "bore", "all-set"}}},
	Sources: []string{"common-practice", "shop-safety"},
	Draw:    shared.DrawSituation("setup", calc.Outside, "screwed", "right-way-up", "no-groove", "lever-over", "bore", "all-set"),
	Work: shared.Decide("setup", map[string]string{
		"screwed": "towards", "right-way-up": "turn-tool", "no-groove": "groove-first",
		"lever-over": "lever-back", "bore": "turn-bar", "all-set": "dry-run",
	}),
	Errors: []problem.CommonError{
		{Name: "slowly", Work: shared.OptionUnlessIn("setup", "slowly", "all-set")},
		{Name: "tighten", Work: shared.OptionUnlessIn("setup", "tighten", "right-way-up", "no-groove", "lever-over", "bore", "all-set")},
		{Name: "collet", Work: shared.OptionUnlessIn("setup", "collet", "right-way-up", "no-groove", "lever-over", "bore", "all-set")},
		{Name: "turn-tool", Work: shared.OptionUnlessIn("setup", "turn-tool", "right-way-up", "bore", "screwed")},
		{Name: "forward", Work: shared.OptionUnlessIn("setup", "forward", "screwed", "right-way-up", "bore")}, // there it is the usual way
		{Name: "lever-over", Work: shared.OptionUnlessIn("setup", "lever-over", "lever-over", "screwed", "no-groove")},
		{Name: "in-metal", Work: shared.OptionUnlessIn("setup", "in-metal", "screwed", "right-way-up", "lever-over", "bore", "all-set")},
		{Name: "cut-now", Work: shared.OptionUnlessIn("setup", "cut-now", "screwed")},
	},
})
