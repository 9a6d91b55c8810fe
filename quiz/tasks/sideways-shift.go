package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "sideways-shift", Stage: quiz.Infeed,
	Inputs:  inputs(quiz.ThreadInputs, compoundAngle...),
	Tol:     quiz.Tolerance{Inch: 0.001, MM: 0.025},
	Sources: []string{"geometry", "navy"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/16, calc.Inch/6), calc.Outside)
		tellAngle(d, &v)
		if tied(d, externalDepth(v).Times(angleOf(v).Tan())) {
			return quiz.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := only(v, calc.Outside); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		h := w.Length("h", "0.613435 x P")(calc.RadialDepthOfForm(w.Pitch(), calc.UnifiedExternal))
		w.Length("b", "h x tan(a)")(calc.SidewaysShift(h, angleStep(w, v)))
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "none", Work: func(quiz.Values) quiz.Reply { return quiz.X(0) }},
		{Name: "sin", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(angleOf(v).Sin())) }},
		// One number, two causes: divided by tan, or the angle taken from the bed.
		{Name: "cot", Twin: "cot", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(1 / angleOf(v).Tan())) }},
		{Name: "depth", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v)) }},
		{Name: "travel", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(1 / angleOf(v).Cos())) }},
	},
})
