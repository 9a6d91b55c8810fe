package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "reversing-a-screwed-chuck", Stage: problem.Safety, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "nose", Symbol: "nose", Type: problem.InputWord, Words: []string{"screwed", "screwed-line", "locked"}}},
	Sources: []string{"shop-safety"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("nose", problem.Pick(d, "screwed", "screwed", "screwed-line", "locked"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Choice(map[string]string{
			"screwed": "another-way", "screwed-line": "open-half-nut", "locked": "reverse-locked",
		}[v.Word("nose")])
	},
	Errors: []problem.CommonError{
		{Name: "fine-slow", Work: optionUnlessIn("nose", "fine-slow", "locked")},
		{Name: "tight", Work: optionUnlessIn("nose", "tight", "locked")},
		{Name: "lh-only", Work: optionUnlessIn("nose", "lh-only", "locked")},
		{Name: "open-half-nut", Work: optionUnlessIn("nose", "open-half-nut", "screwed-line")},
		{Name: "tool-in", Work: optionUnlessIn("nose", "tool-in", "screwed", "screwed-line")},
		{Name: "on-the-run", Work: optionUnlessIn("nose", "on-the-run", "screwed")},
	},
})
