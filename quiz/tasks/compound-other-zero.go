package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "compound-other-zero", Stage: quiz.SetUp,
	Inputs: []quiz.Input{
		{Name: "angle", Symbol: "a", Is: quiz.AnAngle, Low: 0, High: 60, Group: "angle"},
		{Name: "included", Symbol: "A", Is: quiz.AnAngle, Low: 10, High: 90, Group: "angle"},
		{Name: "less", Symbol: "e", Is: quiz.APlain, Low: 0, High: 2, Extra: true},
	},
	Tol:     quiz.Tolerance{Else: 0.3},
	Sources: []string{"geometry"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		if d.Level == quiz.NumbersGiven {
			v.Set("angle", quiz.Pick(d, 14.5, 15, 26.5, 27, 27.5, 28, 29, 29.5, 29.5))
		} else {
			v.Set("included", quiz.Pick(d, 60.0, 60, 55, 47.5, 29, 30))
			v.Set("less", quiz.Pick(d, 0.5, 1))
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		a := settingOf(v)
		switch {
		case v.Has("included") && v.Has("less"):
			w.Angle("a", "A / 2 - e")(a, nil)
		case v.Has("included"):
			w.Angle("a", "A / 2")(a, nil)
		}
		w.Angle("s", "90 - a")(calc.CompoundScaleReading(a, calc.ZeroAlong))
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "wrong-ref", Work: func(v quiz.Values) quiz.Reply { return quiz.X(settingOf(v).Degrees()) }},
		{Name: "included", Work: func(v quiz.Values) quiz.Reply { return quiz.X(90 - 2*settingOf(v).Degrees()) }},
		{Name: "plus", Work: func(v quiz.Values) quiz.Reply { return quiz.X(90 + settingOf(v).Degrees()) }},
		{Name: "sixty", Work: func(v quiz.Values) quiz.Reply { return quiz.X(60 - settingOf(v).Degrees()) }},
	},
})

// settingOf is the angle of the compound from the cross-slide line.
func settingOf(v quiz.Values) calc.Angle {
	if v.Has("included") {
		return v.Angle("included")/2 - v.Angle("less")
	}
	return v.Angle("angle")
}
