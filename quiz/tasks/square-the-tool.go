package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "square-the-tool", Stage: problem.Blank, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "found", Symbol: "found", Type: problem.InputWord, Words: []string{"compound", "toolpost", "chuck", "ground"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("found", problem.Pick(d, "compound", "toolpost", "chuck", "ground"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Choice(v.Word("found"))
	},
	Errors: []problem.CommonError{
		{Name: "compound", Work: optionUnlessIn("found", "compound", "compound")},
		{Name: "toolpost", Work: optionUnlessIn("found", "toolpost", "toolpost")},
		{Name: "chuck", Work: optionUnlessIn("found", "chuck", "chuck")},
		{Name: "ground", Work: optionUnlessIn("found", "ground", "ground")},
		{Name: "half-degree"},
	},
})
