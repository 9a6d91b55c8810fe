package blank

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "square-the-tool", Stage: problem.Blank, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "found", Symbol: "found", Type: problem.InputWord, Words: []string{"compound", "toolpost", "chuck", "ground"}}},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituation("found", calc.Outside, "compound", "toolpost", "chuck", "ground"),
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Choice(v.Word("found"))
	},
	Errors: []problem.CommonError{
		{Name: "compound", Work: shared.OptionUnlessIn("found", "compound", "compound")},
		{Name: "toolpost", Work: shared.OptionUnlessIn("found", "toolpost", "toolpost")},
		{Name: "chuck", Work: shared.OptionUnlessIn("found", "chuck", "chuck")},
		{Name: "ground", Work: shared.OptionUnlessIn("found", "ground", "ground")},
		{Name: "half-degree"},
	},
})
