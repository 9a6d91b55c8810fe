package tasks

import "scratchpass/quiz"

var _ = register(quiz.Task{
	Name: "left-hand-clearance", Stage: quiz.Blank,
	Inputs:  handed,
	Sources: []string{"geometry", "common-practice"},
	Draw:    drawHanded,
	Work: func(v quiz.Values) (quiz.Working, error) {
		return v.Working().Choice(map[string]string{
			"outside-right": "left-side", "outside-left": "right-side", "inside-right": "left-side", "inside-left": "right-side",
		}[v.Word("kind")])
	},
	Slips: []quiz.Slip{
		{Name: "same", Work: optionUnlessIn("kind", "same", "outside-right", "inside-right")},
		{Name: "right-side", Work: optionUnlessIn("kind", "right-side", "outside-left", "inside-left")},
		{Name: "both"},
		{Name: "none"},
	},
})
