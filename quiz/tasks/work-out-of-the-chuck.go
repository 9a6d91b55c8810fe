package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "work-out-of-the-chuck", Stage: quiz.Passes,
	Inputs:  []quiz.Input{{Name: "held", Symbol: "held", Is: quiz.AWord, Words: []string{"chuck", "centres", "was-out"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("held", quiz.Pick(d, "chuck", "centres", "was-out"))
		if v.Case() == "centres" {
			v.Phrase("job", "job-between-centres")
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"chuck": "leave-in", "centres": "same-slot", "was-out": "pick-up"}[v.Word("held")])
	},
	Slips: []quiz.Slip{
		{Name: "marked", Work: optionUnlessIn("held", "marked", "centres", "was-out")},
		{Name: "any-slot", Work: optionUnlessIn("held", "any-slot", "chuck", "was-out")},
		{Name: "rechuck", Work: optionUnlessIn("held", "rechuck", "was-out")},
		{Name: "no-dial-moved", Work: optionUnlessIn("held", "no-dial-moved", "was-out")},
		{Name: "other-dog", Work: optionUnlessIn("held", "other-dog", "chuck", "was-out")},
		{Name: "cut-on", Work: optionUnlessIn("held", "cut-on", "chuck", "centres")},
		{Name: "true-and-cut", Work: optionUnlessIn("held", "true-and-cut", "chuck", "centres")},
		{Name: "deeper", Work: optionUnlessIn("held", "deeper", "chuck", "centres")},
	},
})
