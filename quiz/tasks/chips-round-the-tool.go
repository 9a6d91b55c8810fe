package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "chips-round-the-tool", Stage: quiz.Passes, Gate: true,
	Inputs:  []quiz.Input{{Name: "chips", Symbol: "chips", Is: quiz.AWord, Words: []string{"wrapping", "whipping", "standing"}}},
	Sources: []string{"shop-safety"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("chips", quiz.Pick(d, "wrapping", "whipping", "standing"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"wrapping": "stop-then-hook", "whipping": "stop-button", "standing": "hook-now"}[v.Word("chips")])
	},
	Slips: []quiz.Slip{
		{Name: "hand"},
		{Name: "glove", Work: optionUnlessIn("chips", "glove", "standing")},
		{Name: "air", Work: optionUnlessIn("chips", "air", "whipping")},
		{Name: "hook-turning", Work: optionUnlessIn("chips", "hook-turning", "standing")},
		{Name: "throw-off", Work: optionUnlessIn("chips", "throw-off", "wrapping", "whipping")},
	},
})
