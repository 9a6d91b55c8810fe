package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "acme-compound-angle", Stage: quiz.SetUp,
	Inputs: []quiz.Input{
		{Name: "included", Symbol: "A", Is: quiz.AnAngle, Low: 10, High: 90, Group: "form"},
		{Name: "form", Symbol: "form", Is: quiz.AWord, Words: threadForms, Group: "form"},
	},
	Tol:     quiz.Tolerance{Else: 0.2},
	Sources: []string{"handbook", "geometry"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		if d.Level == quiz.NumbersGiven {
			v.Set("included", quiz.Pick(d, 29.0, 29, 30, 40, 47.5, 55, 60, 80))
		} else {
			v.SetWord("form", quiz.Pick(d, threadForms...))
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		included := includedAngle(v)
		if v.Has("form") {
			w.Angle("A", "")(included, nil)
		}
		w.Angle("a", "A / 2")(included/2, nil)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "included", Work: func(v quiz.Values) quiz.Reply { return quiz.X(includedAngle(v).Degrees()) }},
		{Name: "habit", Work: func(v quiz.Values) quiz.Reply {
			if includedAngle(v) == 60 {
				return quiz.NoAnswer // here the habit is the other convention
			}
			return quiz.X(habitAngle.Degrees())
		}},
		{Name: "complement", Work: func(v quiz.Values) quiz.Reply {
			if includedAngle(v) == 60 {
				return quiz.NoAnswer // here it can't be told from the angle between the flanks
			}
			return quiz.X(90 - includedAngle(v).Degrees()/2)
		}},
		{Name: "half-less", Convention: true, Work: func(v quiz.Values) quiz.Reply {
			return quiz.X(includedAngle(v).Degrees()/2 - 0.5)
		}},
	},
})

// threadForms are the forms a learner may meet by name; the angle between the flanks
// is part of what the name says.
var threadForms = []string{"acme", "stub-acme", "trapezoidal", "whitworth", "unified", "metric"}

func includedAngle(v quiz.Values) calc.Angle {
	switch v.Case() {
	case "acme", "stub-acme":
		return calc.AcmeAngle
	case "trapezoidal":
		return 30
	case "whitworth":
		return 55
	case "unified", "metric":
		return 60
	}
	return v.Angle("included")
}
