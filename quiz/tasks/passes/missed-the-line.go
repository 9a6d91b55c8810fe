package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "missed-the-line", Stage: problem.Passes, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "moment", Symbol: "moment", Type: problem.InputWord, Words: []string{"past", "late", "forgot"}}},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituation("moment", calc.Outside, "past", "late", "forgot"),
	Work:    shared.Decide("moment", map[string]string{"past": "wait", "late": "pull-out", "forgot": "check-groove"}),
	Errors: []problem.CommonError{
		{Name: "push", Work: shared.OptionUnlessIn("moment", "push", "late", "forgot")},
		{Name: "guess", Work: shared.OptionUnlessIn("moment", "guess", "late")},
		{Name: "stop-mid", Work: shared.OptionUnlessIn("moment", "stop-mid", "late", "forgot")},
		{Name: "let-run", Work: shared.OptionUnlessIn("moment", "let-run", "past", "forgot")},
		{Name: "open-first", Work: shared.OptionUnlessIn("moment", "open-first", "past", "forgot")},
		{Name: "steer", Work: shared.OptionUnlessIn("moment", "steer", "past", "forgot")},
		{Name: "mark-one", Work: shared.OptionUnlessIn("moment", "mark-one", "past", "late")},
		{Name: "light-try", Work: shared.OptionUnlessIn("moment", "light-try", "past", "late")},
	},
})
