package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "two-grooves-cause", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "sign", Symbol: "sign", Type: problem.InputWord, Words: []string{"two", "two-metric", "torn", "long"}}},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituation("sign", calc.Outside, "two", "two-metric", "torn", "long"),
	Work:    shared.Decide("sign", map[string]string{"two": "wrong-line", "two-metric": "was-opened", "torn": "blunt", "long": "gears"}),
	Errors: []problem.CommonError{
		{Name: "blunt", Work: shared.OptionUnlessIn("sign", "blunt", "torn")},
		{Name: "speed"},
		{Name: "depth"},
		{Name: "wrong-line", Work: shared.OptionUnlessIn("sign", "wrong-line", "two", "two-metric")},
		{Name: "gears", Work: shared.OptionUnlessIn("sign", "gears", "two", "two-metric", "long")},
	},
})
