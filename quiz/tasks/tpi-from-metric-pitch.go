package tasks

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "tpi-from-metric-pitch", Stage: quiz.Reading,
	Inputs:  []quiz.Input{quiz.ThreadInputs[1], quiz.ThreadInputs[2]},
	Tol:     quiz.Tolerance{Else: 0.05},
	Systems: []machine.System{machine.Metric},
	Sources: []string{"arithmetic"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Millimetres(1), calc.Millimetres(4.5)), calc.Outside)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		pitch := v.Pitch() // not by way of the threads per inch, where a callout tells those
		if v.Has("thread") {
			w.Length("P", "")(pitch, nil)
		}
		n, err := calc.TPI(pitch)
		w.Number("n", "25.4 / P", machine.TPIUnit)(n.Number(), err)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "mult", Work: func(v quiz.Values) quiz.Reply { return quiz.X(calc.MillimetresPerInch * v.Pitch().Millimetres()) }},
		{Name: "recip", Work: func(v quiz.Values) quiz.Reply { return quiz.X(1 / v.Pitch().Millimetres()) }},
		{Name: "ten", Work: func(v quiz.Values) quiz.Reply { return quiz.X(10 / v.Pitch().Millimetres()) }},
		{Name: "round25", Work: func(v quiz.Values) quiz.Reply { return quiz.X(25 / v.Pitch().Millimetres()) }},
		{Name: "whole", Work: func(v quiz.Values) quiz.Reply {
			whole := calc.Round(perInch(v), 0)
			if math.Abs(whole-25/v.Pitch().Millimetres()) < 0.01 {
				return quiz.NoAnswer // the number that 25 mm in an inch gives as well
			}
			return quiz.X(whole)
		}},
	},
})
