package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "centre-runs-hot", Stage: problem.Passes, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "seen", Symbol: "seen", Type: problem.InputWord, Words: []string{"dry", "grown", "cooled", "live", "headstock"}}},
	Sources: []string{"lathe-manual-centres", "common-practice"},
	Draw: shared.DrawSituationWith("seen", calc.Outside, func(_ *problem.Draw, v *problem.Values) {
		v.Phrase("job", "job-pump-part") // how it is held stands in the situation
	}, "dry", "grown", "cooled", "live", "headstock"),
	Work: shared.Decide("seen", map[string]string{
		"dry": "mend-and-grease", "grown": "ease", "cooled": "take-up", "live": "free-and-set", "headstock": "leave",
	}),
	Errors: []problem.CommonError{
		{Name: "mend-and-grease", Work: shared.OptionUnlessIn("seen", "mend-and-grease", "dry", "grown", "live")},
		{Name: "ease", Work: shared.OptionUnlessIn("seen", "ease", "grown", "dry")},
		{Name: "take-up", Work: shared.OptionUnlessIn("seen", "take-up", "cooled", "live", "headstock")},
		{Name: "leave", Work: shared.OptionUnlessIn("seen", "leave", "headstock")},
		{Name: "as-hard", Work: shared.OptionUnlessIn("seen", "as-hard", "headstock")},
		{Name: "drip", Work: shared.OptionUnlessIn("seen", "drip", "cooled")},
		{Name: "slower", Work: shared.OptionUnlessIn("seen", "slower", "headstock")},
	},
})
