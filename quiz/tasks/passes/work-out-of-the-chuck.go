package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "work-out-of-the-chuck", Stage: problem.Passes, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "held", Symbol: "held", Type: problem.InputWord, Words: []string{"chuck", "centres", "was-out"}}},
	Sources: []string{"common-practice"},
	Draw: shared.DrawSituationWith("held", calc.Outside, func(_ *problem.Draw, v *problem.Values) {
		if v.Situation() == "centres" {
			v.Phrase("job", "job-between-centres")
		}
	}, "chuck", "centres", "was-out"),
	Work: shared.Decide("held", map[string]string{"chuck": "leave-in", "centres": "same-slot", "was-out": "pick-up"}),
	Errors: []problem.CommonError{
		{Name: "marked", Work: shared.OptionUnlessIn("held", "marked", "centres", "was-out")},
		{Name: "any-slot", Work: shared.OptionUnlessIn("held", "any-slot", "chuck", "was-out")},
		{Name: "rechuck", Work: shared.OptionUnlessIn("held", "rechuck", "was-out")},
		{Name: "no-dial-moved", Work: shared.OptionUnlessIn("held", "no-dial-moved", "was-out")},
		{Name: "other-dog", Work: shared.OptionUnlessIn("held", "other-dog", "chuck", "was-out")},
		{Name: "cut-on", Work: shared.OptionUnlessIn("held", "cut-on", "chuck", "centres")},
		{Name: "true-and-cut", Work: shared.OptionUnlessIn("held", "true-and-cut", "chuck", "centres")},
		{Name: "deeper", Work: shared.OptionUnlessIn("held", "deeper", "chuck", "centres")},
	},
})
