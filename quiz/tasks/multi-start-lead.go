package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "multi-start-lead", Stage: quiz.Reading,
	Inputs:  inputs(quiz.ThreadInputs, startsInput),
	Tol:     quiz.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources: []string{"b1-1"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		t := d.Thread(calc.Inch/20, calc.Inch/8)
		t.Starts = quiz.Pick(d, 2, 2, 3, 4)
		ways := []string{"pitch"}
		switch {
		case d.Level != quiz.NumbersGiven && t.Metric:
			ways = []string{"previous"}
		case d.Level != quiz.NumbersGiven:
			ways = []string{"tpi", "tpi", "previous"}
		}
		d.TellAs(&v, t, calc.Outside, ways...)
		v.Set("starts", float64(t.Starts))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		leadStep(w, v, w.Pitch())
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "pitch", Work: func(v quiz.Values) quiz.Reply {
			if starts(v) == 1 {
				return quiz.NoAnswer
			}
			return quiz.L(v.Pitch())
		}},
		{Name: "div", Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch().Times(1 / starts(v))) }},
		{Name: "tpi-mult", Work: func(v quiz.Values) quiz.Reply {
			unit := v.System.Length()
			return quiz.X(starts(v) / (v.Pitch().Inches() * unit.Factor) / unit.Factor)
		}},
	},
})
