package blank

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "rake-and-form", Stage: problem.Blank, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "tool", Symbol: "tool", Type: problem.InputWord,
		Words: []string{"to-grind", "has-rake", "roughing", "dull"}}},
	Sources: []string{"relief-angles", "jones-1914", "geometry", "common-practice"},
	Draw:    shared.DrawSituation("tool", calc.Outside, "to-grind", "has-rake", "roughing", "dull"),
	Work: shared.Decide("tool", map[string]string{
		"to-grind": "flat-top", "has-rake": "wider", "roughing": "finish-flat", "dull": "top-only",
	}),
	Errors: []problem.CommonError{
		{Name: "turning-rake", Work: shared.OptionUnlessIn("tool", "turning-rake", "has-rake", "roughing", "dull")},
		{Name: "down-to-point", Work: shared.OptionUnlessIn("tool", "down-to-point", "has-rake", "roughing", "dull")},
		{Name: "by-feel", Work: shared.OptionUnlessIn("tool", "by-feel", "has-rake", "roughing", "dull")},
		{Name: "still-60", Work: shared.OptionUnlessIn("tool", "still-60", "to-grind", "roughing", "dull")},
		{Name: "narrower", Work: shared.OptionUnlessIn("tool", "narrower", "to-grind", "roughing", "dull")},
		{Name: "pitch-off", Work: shared.OptionUnlessIn("tool", "pitch-off", "to-grind", "roughing", "dull")},
		{Name: "same-tool", Work: shared.OptionUnlessIn("tool", "same-tool", "to-grind", "has-rake", "dull")},
		{Name: "more-slope", Work: shared.OptionUnlessIn("tool", "more-slope", "to-grind", "has-rake", "dull")},
		{Name: "swing-more", Work: shared.OptionUnlessIn("tool", "swing-more", "to-grind", "has-rake", "dull")},
		{Name: "one-side", Work: shared.OptionUnlessIn("tool", "one-side", "to-grind", "has-rake", "roughing")},
		{Name: "hollow", Work: shared.OptionUnlessIn("tool", "hollow", "to-grind", "has-rake", "roughing")},
		{Name: "blunt-nose", Work: shared.OptionUnlessIn("tool", "blunt-nose", "to-grind", "has-rake", "roughing")},
	},
})
