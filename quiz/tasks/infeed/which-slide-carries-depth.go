package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "which-slide-carries-depth", Stage: problem.Infeed, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "phase", Symbol: "phase", Type: problem.InputWord, Words: []string{"roughing", "finishing"}}},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituation("phase", calc.Outside, "roughing", "finishing"),
	Work: func(v problem.Values) (problem.Working, error) {
		if v.Word("phase") == "finishing" {
			return v.Working().Choice("cross-to-sum")
		}
		return v.Working().Choice("cross-zero-compound-in")
	},
	Errors: []problem.CommonError{
		{Name: "cross-in", Work: shared.OptionUnlessIn("phase", "cross-in", "finishing")},
		{Name: "both"},
		{Name: "compound-out"},
		{Name: "cross-zero-compound-in", Work: shared.OptionUnlessIn("phase", "cross-zero-compound-in", "roughing")},
	},
})
