package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "electronic-lead-screw", Stage: problem.SetUp, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "event", Symbol: "event", Type: problem.InputWord,
		Words: []string{"half-thread", "power-lost", "shoulder-near", "belt-slips", "pitch-set"}}},
	Sources: []string{"els", "common-practice"},
	Draw:    shared.DrawSituation("event", calc.Outside, "half-thread", "power-lost", "shoulder-near", "belt-slips", "pitch-set"),
	Work: shared.Decide("event", map[string]string{
		"half-thread": "keep-closed", "power-lost": "pick-up-again", "shoulder-near": "hand-on-lever",
		"belt-slips": "stop-report", "pitch-set": "scratch-first",
	}),
	Errors: []problem.CommonError{
		{Name: "open-anyway", Work: shared.OptionUnlessIn("event", "open-anyway", "power-lost", "shoulder-near", "belt-slips", "pitch-set")},
		{Name: "same-line", Work: shared.OptionUnlessIn("event", "same-line", "shoulder-near", "belt-slips", "pitch-set")},
		{Name: "tool-in", Work: shared.OptionUnlessIn("event", "tool-in", "power-lost", "shoulder-near", "belt-slips", "pitch-set")},
		{Name: "go-on", Work: shared.OptionUnlessIn("event", "go-on", "half-thread", "shoulder-near", "pitch-set")},
		{Name: "same-start", Work: shared.OptionUnlessIn("event", "same-start", "half-thread", "shoulder-near", "pitch-set")},
		{Name: "trust-stop", Work: shared.OptionUnlessIn("event", "trust-stop", "half-thread", "power-lost", "belt-slips", "pitch-set")},
		{Name: "faster", Work: shared.OptionUnlessIn("event", "faster", "half-thread", "power-lost", "belt-slips", "pitch-set")},
		{Name: "at-the-line", Work: shared.OptionUnlessIn("event", "at-the-line", "half-thread", "power-lost", "belt-slips", "pitch-set")},
		{Name: "slower", Work: shared.OptionUnlessIn("event", "slower", "half-thread", "power-lost", "shoulder-near", "pitch-set")},
		{Name: "full-depth", Work: shared.OptionUnlessIn("event", "full-depth", "half-thread", "power-lost", "shoulder-near", "belt-slips")},
		{Name: "no-check", Work: shared.OptionUnlessIn("event", "no-check", "half-thread", "power-lost", "shoulder-near", "belt-slips")},
		{Name: "count-teeth", Work: shared.OptionUnlessIn("event", "count-teeth", "half-thread", "power-lost", "shoulder-near", "belt-slips")},
	},
})
