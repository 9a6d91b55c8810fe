package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "tool-nose-flat", Stage: quiz.Shape,
	Inputs:  quiz.ThreadInputs,
	Tol:     quiz.Tolerance{Inch: 0.0007, MM: 0.018},
	Sources: []string{"geometry", "school-handout"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		d.Tell(&v, firstThread(d), calc.Outside)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		w.Length("f", "P / 8")(w.Pitch().Times(1.0/8), nil)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "quarter", Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch().Times(1.0 / 4)) }},
		{Name: "sixth", Convention: true, Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch().Times(1.0 / 6)) }},
		// One eighth of the unit the learner works in.
		{Name: "eighth-inch", Work: func(v quiz.Values) quiz.Reply { return quiz.X(1.0 / 8 / v.System.Length().Factor) }},
		{Name: "sharp", Work: func(quiz.Values) quiz.Reply { return quiz.X(0) }},
		{Name: "depth8", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(1.0 / 8)) }},
	},
})
