package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "compound-travel-needed", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs:    shared.Inputs(append(shared.Inputs(problem.ThreadInputs), shared.CompoundAngle...), shared.LengthInput("spare", "m", 0, 1)),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"compound-feeds", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, shared.FirstThread(d), calc.Outside)
		shared.TellAngle(d, &v)
		if d.System == machine.Metric {
			v.SetLength("spare", calc.Millimetres(d.Steps(1, 4, 0.5)))
		} else {
			v.SetLength("spare", calc.Inches(d.Steps(0.05, 0.15, 0.01)))
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		h := problem.Step1(w, "h", calc.ExternalDepth, w.Pitch())
		c := problem.Step2(w, "c", calc.TravelForDepth, h, shared.AngleStep(w, v))
		w.Length("u", "c + m")(c+v.Length("spare"), nil)
		return w.Quantity()
	},
	Errors: append([]problem.CommonError{
		{Name: "no-cos", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v) + v.Length("spare"))
		}},
		{Name: "no-spare", Work: func(v problem.Values) answer.Response {
			if v.X("spare") == 0 {
				return answer.NoResponse
			}
			return answer.LengthResponse(shared.ExternalTravel(v))
		}},
		{Name: "sin", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(1/shared.AngleOf(v).Sin()) + v.Length("spare"))
		}},
		{Name: "times-cos", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(shared.AngleOf(v).Cos()) + v.Length("spare"))
		}},
		{Name: "radians", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(1/shared.InRadians(shared.AngleOf(v))) + v.Length("spare"))
		}},
	}, shared.OtherAngles(func(v problem.Values, a calc.Angle) (calc.Length, error) {
		c, err := shared.TravelAt(v, a)
		return c + v.Length("spare"), err
	})...),
})
