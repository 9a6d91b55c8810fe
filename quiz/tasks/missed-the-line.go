package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "missed-the-line", Stage: quiz.Passes,
	Inputs:  []quiz.Input{{Name: "moment", Symbol: "moment", Is: quiz.AWord, Words: []string{"past", "late", "forgot"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("moment", quiz.Pick(d, "past", "late", "forgot"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"past": "wait", "late": "pull-out", "forgot": "check-groove"}[v.Word("moment")])
	},
	Slips: []quiz.Slip{
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
