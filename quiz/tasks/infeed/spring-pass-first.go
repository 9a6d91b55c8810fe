package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "spring-pass-first", Stage: problem.Infeed, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "nut", Symbol: "nut", Type: problem.InputWord, Words: []string{"drags", "springs-done", "free"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("nut", problem.Pick(d, "drags", "springs-done", "free"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"drags": "springs", "springs-done": "one-line", "free": "done"}[v.Word("nut")])
	},
	Errors: []problem.CommonError{
		{Name: "full-cut"},
		{Name: "file"},
		{Name: "force", Work: shared.OptionUnlessIn("nut", "force", "free")},
		{Name: "springs", Work: shared.OptionUnlessIn("nut", "springs", "drags")},
		{Name: "one-line", Work: shared.OptionUnlessIn("nut", "one-line", "drags", "springs-done")},
		{Name: "done", Work: shared.OptionUnlessIn("nut", "done", "free", "springs-done")},
	},
})
