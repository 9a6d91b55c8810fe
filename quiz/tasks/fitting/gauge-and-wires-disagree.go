package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "gauge-and-wires-disagree", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "seen", Symbol: "seen", Type: problem.InputWord,
		Words: []string{"not-started", "tightens", "tight-throughout", "wide-nose", "reads-small"}}},
	Sources: []string{"gauge-makers", "geometry", "common-practice"},
	Draw:    shared.DrawSituation("seen", calc.Outside, "not-started", "tightens", "tight-throughout", "wide-nose", "reads-small"),
	Work: shared.Decide("seen", map[string]string{
		"not-started": "deburr", "tightens": "check-pitch", "tight-throughout": "check-angle", "wide-nose": "smaller-nose", "reads-small": "measure-again",
	}),
	Errors: []problem.CommonError{
		{Name: "deburr", Work: shared.OptionUnlessIn("seen", "deburr", "not-started")},
		{Name: "check-pitch", Work: shared.OptionUnlessIn("seen", "check-pitch", "tightens", "reads-small")},
		{Name: "check-angle", Work: shared.OptionUnlessIn("seen", "check-angle", "tight-throughout", "wide-nose", "reads-small")},
		{Name: "smaller-nose", Work: shared.OptionUnlessIn("seen", "smaller-nose", "wide-nose", "tight-throughout", "not-started", "reads-small")},
		{Name: "cut-more", Work: shared.OptionUnlessIn("seen", "cut-more", "reads-small")},
		{Name: "force", Work: shared.OptionUnlessIn("seen", "force", "reads-small")},
		{Name: "trust-wires", Work: shared.OptionUnlessIn("seen", "trust-wires", "reads-small")},
		{Name: "trust-ring", Work: shared.OptionUnlessIn("seen", "trust-ring", "not-started", "tightens", "tight-throughout", "wide-nose")},
		{Name: "scrap-now", Work: shared.OptionUnlessIn("seen", "scrap-now", "not-started", "tightens", "tight-throughout", "wide-nose")},
		{Name: "middle", Work: shared.OptionUnlessIn("seen", "middle", "not-started", "tightens", "tight-throughout", "wide-nose")},
	},
})
