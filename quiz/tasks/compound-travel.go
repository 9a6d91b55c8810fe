package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "compound-travel", Stage: quiz.Infeed,
	Inputs:  inputs(quiz.ThreadInputs, compoundAngle...),
	Scrap:   quiz.ScrapHigh,
	Tol:     quiz.Tolerance{Inch: 0.001, MM: 0.025},
	Sources: []string{"compound-feeds", "navy"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/13, calc.Inch/6), calc.Outside)
		tellAngle(d, &v)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := only(v, calc.Outside); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		h := w.Length("h", "0.613435 x P")(calc.RadialDepthOfForm(w.Pitch(), calc.UnifiedExternal))
		a := angleStep(w, v)
		w.Length("c", "h / cos(a)")(calc.CompoundTravel(h, a))
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "no-angle", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v)) }},
		{Name: "times-cos", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(angleOf(v).Cos())) }},
		// One number, two causes: the wrong button, or the angle taken from the bed.
		{Name: "sin-or-ref", Twin: "sin-or-ref", Work: func(v quiz.Values) quiz.Reply {
			return quiz.L(externalDepth(v).Times(1 / angleOf(v).Sin()))
		}},
		{Name: "double", Work: func(v quiz.Values) quiz.Reply {
			return quiz.L(externalDepth(v).Times(2 / angleOf(v).Cos()))
		}},
		{Name: "double-no-angle", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(2)) }},
	},
})
