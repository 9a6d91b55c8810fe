package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "screw-pitch-gauge", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "blade", Symbol: "blade", Type: problem.InputWord,
		Words: []string{"all-fit", "drifts", "near-pitch", "leans", "running"}}},
	Sources: []string{"tm-9-243", "arithmetic", "common-practice"},
	Draw:    shared.DrawSituation("blade", calc.Outside, "all-fit", "drifts", "near-pitch", "leans", "running"),
	Work: shared.Decide("blade", map[string]string{
		"all-fit": "go-on", "drifts": "check-gears", "near-pitch": "longer", "leans": "square-up", "running": "stop-first",
	}),
	Errors: []problem.CommonError{
		{Name: "go-on", Work: shared.OptionUnlessIn("blade", "go-on", "all-fit", "running")},
		{Name: "check-gears", Work: shared.OptionUnlessIn("blade", "check-gears", "drifts", "near-pitch", "running")},
		{Name: "longer", Work: shared.OptionUnlessIn("blade", "longer", "near-pitch", "all-fit", "drifts", "running")},
		{Name: "square-up", Work: shared.OptionUnlessIn("blade", "square-up", "leans", "running")},
		{Name: "other-blade", Work: shared.OptionUnlessIn("blade", "other-blade", "near-pitch", "running")},
		{Name: "deeper", Work: shared.OptionUnlessIn("blade", "deeper", "all-fit", "running")},
		{Name: "press", Work: shared.OptionUnlessIn("blade", "press", "all-fit")},
		{Name: "slow-down", Work: shared.OptionUnlessIn("blade", "slow-down", "all-fit", "drifts", "near-pitch", "leans")},
	},
})
