package safety

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "reversing-a-screwed-chuck", Stage: problem.Safety, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "nose", Symbol: "nose", Type: problem.InputWord, Words: []string{"screwed", "screwed-line", "locked"}}},
	Sources: []string{"shop-safety"},
	Draw:    shared.DrawSituation("nose", calc.Outside, "screwed", "screwed-line", "locked"),
	Work: shared.Decide("nose", map[string]string{
		"screwed": "another-way", "screwed-line": "open-half-nut", "locked": "reverse-locked",
	}),
	Errors: []problem.CommonError{
		{Name: "fine-slow", Work: shared.OptionUnlessIn("nose", "fine-slow", "locked")},
		{Name: "tight", Work: shared.OptionUnlessIn("nose", "tight", "locked")},
		{Name: "lh-only", Work: shared.OptionUnlessIn("nose", "lh-only", "locked")},
		{Name: "open-half-nut", Work: shared.OptionUnlessIn("nose", "open-half-nut", "screwed-line")},
		{Name: "tool-in", Work: shared.OptionUnlessIn("nose", "tool-in", "screwed", "screwed-line")},
		{Name: "on-the-run", Work: shared.OptionUnlessIn("nose", "on-the-run", "screwed")},
	},
})
