package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
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
		{Name: "blunt", Work: shared.OptionUnlessIn("sign", "blunt", "torn")},
		{Name: "speed"},
		{Name: "depth"},
		{Name: "wrong-line", Work: shared.OptionUnlessIn("sign", "wrong-line", "two", "two-metric")},
		{Name: "gears", Work: shared.OptionUnlessIn("sign", "gears", "two", "two-metric", "long")},
	},
})
