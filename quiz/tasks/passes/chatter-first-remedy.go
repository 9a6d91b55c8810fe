package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "chatter-first-remedy", Stage: problem.Passes, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "state", Symbol: "state", Type: problem.InputWord, Words: []string{"long-bar", "loose-slide", "fast", "heavy"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("state", problem.Pick(d, "long-bar", "loose-slide", "fast", "heavy"))
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"long-bar": "shorten", "loose-slide": "snug", "fast": "slower", "heavy": "lighter"}[v.Word("state")])
	},
	Errors: []problem.CommonError{
		{Name: "deeper"},
		{Name: "faster"},
		{Name: "longer-bar"},
		{Name: "shorten", Work: shared.OptionUnlessIn("state", "shorten", "long-bar")},
		{Name: "snug", Work: shared.OptionUnlessIn("state", "snug", "loose-slide")},
	},
})
