package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "dog-and-the-line", Stage: problem.Passes, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "drive", Symbol: "drive", Type: problem.InputWord, Words: []string{"reversed", "forward", "slipped", "bottoms"}}},
	Sources: []string{"navy", "common-practice"},
	Draw: shared.DrawSituationWith("drive", calc.Outside, func(_ *problem.Draw, v *problem.Values) {
		v.Phrase("job", "job-between-centres")
	}, "reversed", "forward", "slipped", "bottoms"),
	Work: shared.Decide("drive", map[string]string{"reversed": "tie", "forward": "leave", "slipped": "pick-up", "bottoms": "clear"}),
	Errors: []problem.CommonError{
		{Name: "tie", Work: shared.OptionUnlessIn("drive", "tie", "reversed", "forward")}, // tied it does no harm there
		{Name: "leave", Work: shared.OptionUnlessIn("drive", "leave", "forward")},
		{Name: "other-line", Work: shared.OptionUnlessIn("drive", "other-line", "bottoms")},
		{Name: "tight-centre"},
		{Name: "gently", Work: shared.OptionUnlessIn("drive", "gently", "forward", "slipped")},
		{Name: "cut-on", Work: shared.OptionUnlessIn("drive", "cut-on", "reversed", "forward", "bottoms")},
		{Name: "rechuck", Work: shared.OptionUnlessIn("drive", "rechuck", "bottoms")},
	},
})
