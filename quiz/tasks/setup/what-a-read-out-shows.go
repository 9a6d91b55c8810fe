package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "what-a-read-out-shows", Stage: problem.SetUp, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "event", Symbol: "event", Type: problem.InputWord,
		Words: []string{"wound-back", "compound-fed", "power-lost", "new-tool", "bar-gives", "unit-key"}}},
	Sources: []string{"read-out", "common-practice"},
	Draw:    shared.DrawSituation("event", calc.Outside, "wound-back", "compound-fed", "power-lost", "new-tool", "bar-gives", "unit-key"),
	Work: shared.Decide("event", map[string]string{
		"wound-back": "trust-it", "compound-fed": "compound-dial", "power-lost": "touch-again",
		"new-tool": "touch-new", "bar-gives": "measure-work", "unit-key": "set-unit",
	}),
	Errors: []problem.CommonError{
		{Name: "take-off-play", Work: shared.OptionUnlessIn("event", "take-off-play", "compound-fed", "power-lost", "new-tool", "unit-key")},
		{Name: "trust-it", Work: shared.OptionUnlessIn("event", "trust-it", "wound-back")},
		{Name: "feed-again", Work: shared.OptionUnlessIn("event", "feed-again", "wound-back", "power-lost", "new-tool", "unit-key")},
		{Name: "dial-only", Work: shared.OptionUnlessIn("event", "dial-only", "bar-gives")},
		{Name: "old-number", Work: shared.OptionUnlessIn("event", "old-number", "wound-back", "compound-fed", "bar-gives", "unit-key")},
		{Name: "touch-new", Work: shared.OptionUnlessIn("event", "touch-new", "new-tool", "power-lost", "compound-fed", "unit-key")},
		{Name: "work-it-out", Work: shared.OptionUnlessIn("event", "work-it-out", "wound-back", "compound-fed", "power-lost", "new-tool", "bar-gives")},
	},
})
