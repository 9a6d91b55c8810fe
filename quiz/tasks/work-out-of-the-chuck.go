package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "work-out-of-the-chuck", Stage: problem.Passes, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "held", Symbol: "held", Type: problem.InputWord, Words: []string{"chuck", "centres", "was-out"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("held", problem.Pick(d, "chuck", "centres", "was-out"))
		if v.Situation() == "centres" {
			v.Phrase("job", "job-between-centres")
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"chuck": "leave-in", "centres": "same-slot", "was-out": "pick-up"}[v.Word("held")])
	},
	Errors: []problem.CommonError{
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
