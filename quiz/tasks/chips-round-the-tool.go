package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "chips-round-the-tool", Stage: problem.Passes, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "chips", Symbol: "chips", Type: problem.InputWord, Words: []string{"wrapping", "whipping", "standing"}}},
	Sources: []string{"shop-safety"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("chips", problem.Pick(d, "wrapping", "whipping", "standing"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"wrapping": "stop-then-hook", "whipping": "stop-button", "standing": "hook-now"}[v.Word("chips")])
	},
	Errors: []problem.CommonError{
		{Name: "hand"},
		{Name: "glove", Work: optionUnlessIn("chips", "glove", "standing")},
		{Name: "air", Work: optionUnlessIn("chips", "air", "whipping")},
		{Name: "hook-turning", Work: optionUnlessIn("chips", "hook-turning", "standing")},
		{Name: "throw-off", Work: optionUnlessIn("chips", "throw-off", "wrapping", "whipping")},
	},
})
