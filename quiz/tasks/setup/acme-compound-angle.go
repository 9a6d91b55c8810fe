package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "acme-compound-angle", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "included", Symbol: "A", Type: problem.InputAngle, Low: 10, High: 90, Group: "form"},
		{Name: "form", Symbol: "form", Type: problem.InputWord, Words: threadForms, Group: "form"},
	},
	Tolerance: answer.Tolerance{Other: 0.2},
	Sources:   []string{"handbook", "geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		if d.Level == problem.NumbersGiven {
			v.Set("included", problem.Pick(d, formAngles...))
		} else {
			// each angle as often as another, whatever number of forms has it
			v.SetWord("form", problem.Pick(d, problem.Pick(d, "acme", "stub-acme"), "trapezoidal", "whitworth",
				problem.Pick(d, "unified", "metric"), "british-association", "conduit", "worm-20", "worm-25"))
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		included := includedAngle(v)
		if v.Has("form") {
			w.Angle("A", "")(included, nil)
		}
		w.Angle("a", "A / 2")(included/2, nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "included", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(includedAngle(v).Degrees()) }},
		{Name: "habit", Work: func(v problem.Values) answer.Response {
			if includedAngle(v) == 60 {
				return answer.NoResponse // here the habit is the other convention
			}
			return answer.NumberResponse(shared.HabitAngle.Degrees())
		}},
		{Name: "complement", Work: func(v problem.Values) answer.Response {
			if includedAngle(v) == 60 {
				return answer.NoResponse // here it can't be told from the angle between the flanks
			}
			return answer.NumberResponse(90 - includedAngle(v).Degrees()/2)
		}},
		{Name: "half-less", Convention: true, Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(includedAngle(v).Degrees()/2 - 0.5)
		}},
	},
})

// formAngles are angles between the flanks of threads and worms.
var formAngles = []float64{29, 30, 35, 40, 45, 47.5, 50, 55, 60, 80}

// threadForms are the forms a learner may meet by name; the angle between the flanks
// is part of what the name says.
var threadForms = []string{"acme", "stub-acme", "trapezoidal", "whitworth", "unified", "metric", "british-association", "conduit", "worm-20", "worm-25"}

func includedAngle(v problem.Values) calc.Angle {
	switch v.Situation() {
	case "acme", "stub-acme":
		return calc.AcmeAngle
	case "trapezoidal":
		return 30
	case "whitworth":
		return 55
	case "unified", "metric":
		return 60
	case "british-association":
		return 47.5
	case "conduit":
		return 80
	case "worm-20":
		return 40
	case "worm-25":
		return 50
	}
	return v.Angle("included")
}
