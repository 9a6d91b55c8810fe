package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "chase-a-damaged-thread", Stage: problem.Passes, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "damage", Symbol: "damage", Type: problem.InputWord,
		Words: []string{"one-bruise", "rough-all-along", "in-place", "unknown", "stretched", "bored-damage"}}},
	Sources: []string{"thread-repair", "common-practice"},
	Draw:    shared.DrawSituation("damage", calc.Outside, "one-bruise", "rough-all-along", "in-place", "unknown", "stretched", "bored-damage"),
	Work: shared.Decide("damage", map[string]string{
		"one-bruise": "thread-file", "rough-all-along": "pick-up", "in-place": "die-nut",
		"unknown": "find-out", "stretched": "reject", "bored-damage": "chasing-tap",
	}),
	Errors: []problem.CommonError{
		{Name: "thread-file", Work: shared.OptionUnlessIn("damage", "thread-file", "one-bruise", "in-place", "unknown")},
		{Name: "pick-up", Work: shared.OptionUnlessIn("damage", "pick-up", "rough-all-along", "one-bruise", "bored-damage")},
		{Name: "die-nut", Work: shared.OptionUnlessIn("damage", "die-nut", "in-place", "one-bruise", "rough-all-along", "unknown", "bored-damage")},
		{Name: "any-die", Work: shared.OptionUnlessIn("damage", "any-die", "one-bruise", "rough-all-along", "in-place", "stretched", "bored-damage")},
		{Name: "smaller", Work: shared.OptionUnlessIn("damage", "smaller", "unknown", "stretched", "bored-damage", "one-bruise")},
		{Name: "new-zero", Work: shared.OptionUnlessIn("damage", "new-zero", "one-bruise", "in-place", "unknown", "stretched", "bored-damage")},
		{Name: "deeper", Work: shared.OptionUnlessIn("damage", "deeper", "unknown", "in-place", "bored-damage")},
		{Name: "turning-file", Work: shared.OptionUnlessIn("damage", "turning-file", "rough-all-along", "in-place", "unknown", "stretched", "bored-damage")},
		{Name: "force-nut", Work: shared.OptionUnlessIn("damage", "force-nut", "stretched")},
		{Name: "cutting-tap", Work: shared.OptionUnlessIn("damage", "cutting-tap", "one-bruise", "rough-all-along", "in-place", "unknown", "stretched")},
	},
})
