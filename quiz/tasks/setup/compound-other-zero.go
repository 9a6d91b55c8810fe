package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "compound-other-zero", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "angle", Symbol: "a", Type: problem.InputAngle, Low: 0, High: 60, Group: "angle"},
		{Name: "included", Symbol: "A", Type: problem.InputAngle, Low: 10, High: 90, Group: "angle"},
		{Name: "less", Symbol: "e", Type: problem.InputPlain, Low: 0, High: 2, Extra: true},
	},
	Tolerance: answer.Tolerance{Other: 0.3},
	Sources:   []string{"geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		if d.Level == problem.NumbersGiven {
			v.Set("angle", problem.Pick(d, 14, 14.5, 15, 17.5, 20, 22, 22.5, 24.5, 25, 26.5, 27, 27.5, 28, 28.5, 29, 29.5))
		} else {
			v.Set("included", problem.Pick(d, 60.0, 60, 55, 50, 47.5, 45, 40, 35, 30, 29))
			v.Set("less", problem.Pick(d, 0.5, 1))
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		a := settingOf(v)
		switch {
		case v.Has("included") && v.Has("less"):
			w.Angle("a", "A / 2 - e")(a, nil)
		case v.Has("included"):
			w.Angle("a", "A / 2")(a, nil)
		}
		problem.Step1(w, "s", calc.ScaleAlongBed, a)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "wrong-ref", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(settingOf(v).Degrees()) }},
		{Name: "included", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(90 - 2*settingOf(v).Degrees()) }},
		{Name: "plus", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(90 + settingOf(v).Degrees()) }},
		{Name: "sixty", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(60 - settingOf(v).Degrees()) }},
	},
})

// settingOf is the angle of the compound from the cross-slide line.
func settingOf(v problem.Values) calc.Angle {
	if v.Has("included") {
		return v.Angle("included")/2 - v.Angle("less")
	}
	return v.Angle("angle")
}
