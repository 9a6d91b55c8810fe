package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "steady-or-follow-rest", Stage: problem.SetUp, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "work", Symbol: "work", Type: problem.InputWord, Words: []string{"long", "free-end", "flange", "rough", "stout"}}},
	Sources: []string{"jones-1914", "rose", "machine-shop-work"},
	Draw: shared.DrawSituationWith("work", calc.Outside, func(_ *problem.Draw, v *problem.Values) {
		v.Phrase("job", "job-pump-part") // the usual ones say how it is held
	}, "long", "free-end", "flange", "rough", "stout"),
	Work: shared.Decide("work", map[string]string{"long": "follow", "free-end": "steady-end", "flange": "steady-beside", "rough": "band", "stout": "none"}),
	Errors: []problem.CommonError{
		{Name: "follow", Work: shared.OptionUnlessIn("work", "follow", "long", "rough")},
		{Name: "steady-beside", Work: shared.OptionUnlessIn("work", "steady-beside", "flange", "free-end", "rough", "stout")},
		{Name: "steady-end", Work: shared.OptionUnlessIn("work", "steady-end", "free-end", "rough")},
		{Name: "none", Work: shared.OptionUnlessIn("work", "none", "stout", "rough")},
		{Name: "tight-jaws"},
		{Name: "deep-cuts", Work: shared.OptionUnlessIn("work", "deep-cuts", "rough", "stout")},
		{Name: "on-the-skin", Work: shared.OptionUnlessIn("work", "on-the-skin", "long", "free-end", "flange", "stout")},
		{Name: "cloth", Work: shared.OptionUnlessIn("work", "cloth", "long", "free-end", "flange", "stout")},
	},
})
