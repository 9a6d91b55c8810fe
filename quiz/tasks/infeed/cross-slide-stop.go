package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "cross-slide-stop", Stage: problem.Infeed, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "cut", Symbol: "cut", Type: problem.InputWord, Words: []string{"outside", "bore", "straight", "finishing", "new-tool"}}},
	Sources: []string{"jones-1914", "common-practice"},
	Draw: shared.DrawSituationWith("cut", calc.Outside, func(_ *problem.Draw, v *problem.Values) {
		v.Phrase("job", "job-pump-part") // for a thread outside and for one in a bore
	}, "outside", "bore", "straight", "finishing", "new-tool"),
	Work: shared.Decide("cut", map[string]string{
		"outside": "away", "bore": "towards", "straight": "by-the-cut", "finishing": "by-the-cut", "new-tool": "anew",
	}),
	Errors: []problem.CommonError{
		{Name: "away", Work: shared.OptionUnlessIn("cut", "away", "outside", "straight", "finishing", "new-tool")},
		{Name: "towards", Work: shared.OptionUnlessIn("cut", "towards", "bore", "straight", "finishing", "new-tool")},
		{Name: "by-the-cut", Work: shared.OptionUnlessIn("cut", "by-the-cut", "straight", "finishing")},
		{Name: "carriage", Work: shared.OptionUnlessIn("cut", "carriage", "new-tool")},
		{Name: "for-the-dial", Work: shared.OptionUnlessIn("cut", "for-the-dial", "straight", "finishing")},
		{Name: "harder", Work: shared.OptionUnlessIn("cut", "harder", "outside", "bore", "new-tool")},
		{Name: "never", Work: shared.OptionUnlessIn("cut", "never", "outside", "bore")},
	},
})
