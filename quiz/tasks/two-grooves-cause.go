package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "two-grooves-cause", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "sign", Symbol: "sign", Type: problem.InputWord, Words: []string{"two", "two-metric", "torn", "long"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("sign", problem.Pick(d, "two", "two-metric", "torn", "long"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"two": "wrong-line", "two-metric": "was-opened", "torn": "blunt", "long": "gears"}[v.Word("sign")])
	},
	Errors: []problem.CommonError{
		{Name: "blunt", Work: optionUnlessIn("sign", "blunt", "torn")},
		{Name: "speed"},
		{Name: "depth"},
		{Name: "wrong-line", Work: optionUnlessIn("sign", "wrong-line", "two", "two-metric")},
		{Name: "gears", Work: optionUnlessIn("sign", "gears", "two", "two-metric", "long")},
	},
})
