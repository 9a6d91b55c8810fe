package infeed

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "sideways-shift", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.CompoundAngle...),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"geometry", "navy"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, shared.FirstThread(d), calc.Outside)
		shared.TellAngle(d, &v)
		if shift, err := calc.ShiftForDepth.Of(shared.ExternalDepth(v), shared.AngleOf(v)); err != nil || tied(d, shift) {
			return problem.Values{}
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
		problem.Step2(w, "b", calc.ShiftForDepth, h, shared.AngleStep(w, v))
		return w.Quantity()
	},
	Errors: append([]problem.CommonError{
		{Name: "none", Work: func(problem.Values) answer.Response { return answer.NumberResponse(0) }},
		{Name: "sin", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(shared.AngleOf(v).Sin()))
		}},
		// One number, two causes: divided by tan, or the angle taken from the bed.
		{Name: "cot", SameResultAs: "cot", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(1 / shared.AngleOf(v).Tan()))
		}},
		{Name: "depth", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(shared.ExternalDepth(v)) }},
		{Name: "travel", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalTravel(v))
		}},
		{Name: "radians", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(math.Abs(math.Tan(shared.AngleOf(v).Degrees()))))
		}},
	}, shared.OtherAngles(func(v problem.Values, a calc.Angle) (calc.Length, error) {
		return calc.ShiftForDepth.Of(shared.ExternalDepth(v), a)
	})...),
})
