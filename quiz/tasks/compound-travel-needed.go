package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "compound-travel-needed", Stage: quiz.SetUp,
	Inputs:  inputs(append(inputs(quiz.ThreadInputs), compoundAngle...), length("spare", "m", 0, 1)),
	Tol:     quiz.Tolerance{Inch: 0.001, MM: 0.025},
	Sources: []string{"compound-feeds", "common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/16, calc.Inch/6), calc.Outside)
		tellAngle(d, &v)
		if d.System == machine.Metric {
			v.SetLength("spare", calc.Millimetres(d.Steps(1, 4, 0.5)))
		} else {
			v.SetLength("spare", calc.Inches(d.Steps(0.05, 0.15, 0.01)))
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
		a := angleStep(w, v)
		c := w.Length("c", "h / cos(a)")(calc.CompoundTravel(h, a))
		w.Length("u", "c + m")(c+v.Length("spare"), nil)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "no-cos", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v) + v.Length("spare")) }},
		{Name: "no-spare", Work: func(v quiz.Values) quiz.Reply {
			if v.X("spare") == 0 {
				return quiz.NoAnswer
			}
			return quiz.L(externalDepth(v).Times(1 / angleOf(v).Cos()))
		}},
		{Name: "sin", Work: func(v quiz.Values) quiz.Reply {
			return quiz.L(externalDepth(v).Times(1/angleOf(v).Sin()) + v.Length("spare"))
		}},
		{Name: "times-cos", Work: func(v quiz.Values) quiz.Reply {
			return quiz.L(externalDepth(v).Times(angleOf(v).Cos()) + v.Length("spare"))
		}},
	},
})
