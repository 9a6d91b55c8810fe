package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "undersize-part", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs: []problem.Input{
		{Name: "size", Symbol: "size", Type: problem.InputWord, Words: []string{"under", "over", "inside"}},
		shared.LengthInput("by", "by", 0.0005, 0.01),
	},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituationWith("size", calc.Outside, shared.DrawLength("by", 1, 3, 2, 8), "under", "over", "inside"),
	Work:    shared.Decide("size", map[string]string{"under": "report", "over": "light-cut", "inside": "stop"}),
	Errors: []problem.CommonError{
		{Name: "spring", Work: shared.OptionUnlessIn("size", "spring", "over")},
		{Name: "swage", Work: shared.OptionUnlessIn("size", "swage", "over", "inside")},
		{Name: "class", Work: shared.OptionUnlessIn("size", "class", "over", "inside")},
		{Name: "report", Work: shared.OptionUnlessIn("size", "report", "under")},
		{Name: "light-cut", Work: shared.OptionUnlessIn("size", "light-cut", "over", "under")},
		{Name: "stop", Work: shared.OptionUnlessIn("size", "stop", "inside")},
		{Name: "file-crests", Work: shared.OptionUnlessIn("size", "file-crests", "under", "inside")},
	},
})
