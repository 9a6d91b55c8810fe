package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "pitch-from-tpi", Stage: quiz.Reading,
	Inputs:  []quiz.Input{quiz.ThreadInputs[0], quiz.ThreadInputs[2]},
	Tol:     quiz.Tolerance{Inch: 0.0005},
	Systems: []machine.System{machine.Imperial},
	Sources: []string{"b1-1"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		way := "tpi"
		if d.Level != quiz.NumbersGiven {
			way = "callout"
		}
		d.TellAs(&v, d.Thread(calc.Inch/32, calc.Inch/4), calc.Outside, way)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		w.Pitch()
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "tpi-as-pitch", Work: func(v quiz.Values) quiz.Reply { return quiz.X(perInch(v)) }},
		{Name: "decimal", Work: func(v quiz.Values) quiz.Reply { return quiz.X(perInch(v) / 100) }},
		{Name: "half", Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch().Times(0.5)) }},
	},
})

// perInch is the threads per inch, whichever way the thread was told.
func perInch(v quiz.Values) float64 { return calc.Inch.Over(v.Pitch()) }
