package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "missed-the-line", Stage: problem.Passes, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "moment", Symbol: "moment", Type: problem.InputWord, Words: []string{"past", "late", "forgot"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("moment", problem.Pick(d, "past", "late", "forgot"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"past": "wait", "late": "pull-out", "forgot": "check-groove"}[v.Word("moment")])
	},
	Errors: []problem.CommonError{
		{Name: "push", Work: optionUnlessIn("moment", "push", "late", "forgot")},
		{Name: "guess", Work: optionUnlessIn("moment", "guess", "late")},
		{Name: "stop-mid", Work: optionUnlessIn("moment", "stop-mid", "late", "forgot")},
		{Name: "let-run", Work: optionUnlessIn("moment", "let-run", "past", "forgot")},
		{Name: "open-first", Work: optionUnlessIn("moment", "open-first", "past", "forgot")},
		{Name: "steer", Work: optionUnlessIn("moment", "steer", "past", "forgot")},
		{Name: "mark-one", Work: optionUnlessIn("moment", "mark-one", "past", "late")},
		{Name: "light-try", Work: optionUnlessIn("moment", "light-try", "past", "late")},
	},
})
