package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "radius-dial-plunge", Stage: quiz.Infeed, Gate: true,
	Inputs:  quiz.ThreadInputs,
	Tol:     quiz.Tolerance{Inch: 0.001, MM: 0.025},
	Scrap:   quiz.ScrapHigh,
	Sources: []string{"dial-marking", "navy"},
	Draw:    drawPlunge,
	Work:    func(v quiz.Values) (quiz.Working, error) { return workPlunge(v, "h", calc.ReadsRadius) },
	Slips: []quiz.Slip{
		{Name: "dia-habit", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(2)) }},
		{Name: "half", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(0.5)) }},
		{Name: "cos", Work: plungeWithAngle},
	},
})
