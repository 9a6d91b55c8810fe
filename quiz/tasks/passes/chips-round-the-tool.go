package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "chips-round-the-tool", Stage: problem.Passes, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "chips", Symbol: "chips", Type: problem.InputWord, Words: []string{"wrapping", "whipping", "standing"}}},
	Sources: []string{"shop-safety"},
	Draw:    shared.DrawSituation("chips", calc.Outside, "wrapping", "whipping", "standing"),
	Work:    shared.Decide("chips", map[string]string{"wrapping": "stop-then-hook", "whipping": "stop-button", "standing": "hook-now"}),
	Errors: []problem.CommonError{
		{Name: "hand"},
		{Name: "glove", Work: shared.OptionUnlessIn("chips", "glove", "standing")},
		{Name: "air", Work: shared.OptionUnlessIn("chips", "air", "whipping")},
		{Name: "hook-turning", Work: shared.OptionUnlessIn("chips", "hook-turning", "standing")},
		{Name: "throw-off", Work: shared.OptionUnlessIn("chips", "throw-off", "wrapping", "whipping")},
	},
})
