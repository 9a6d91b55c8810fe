package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "best-wire", Stage: quiz.Fitting,
	Inputs:  quiz.ThreadInputs,
	Tol:     quiz.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources: []string{"ordnance", "navy"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/20, calc.Inch/6), calc.Outside)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := only(v, calc.Outside); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		wires, err := calc.WiresFor(w.Pitch())
		w.Length("W", "0.577350 x P")(wires.Best, err)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "sharp-v", Work: depthOf(calc.SharpV)},
		{Name: "half", Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch().Times(0.5)) }},
		{Name: "depth", Work: depthOf(calc.UnifiedExternal)},
		// A wire that can be used, but not the one asked for: no other convention.
		{Name: "max", Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch().Times(0.90)) }},
	},
})
