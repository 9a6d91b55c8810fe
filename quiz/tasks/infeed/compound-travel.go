package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "compound-travel", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.CompoundAngle...),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"compound-feeds", "navy"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, shared.FirstThread(d), calc.Outside)
		shared.TellAngle(d, &v)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		h := problem.Step1(w, "h", calc.ExternalDepth, w.Pitch())
		problem.Step2(w, "c", calc.TravelForDepth, h, shared.AngleStep(w, v))
		return w.Quantity()
	},
	Errors: append([]problem.CommonError{
		{Name: "no-angle", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(shared.ExternalDepth(v)) }},
		{Name: "times-cos", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(shared.AngleOf(v).Cos()))
		}},
		// One number, two causes: the wrong button, or the angle taken from the bed.
		{Name: "sin-or-ref", SameResultAs: "sin-or-ref", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(1 / shared.AngleOf(v).Sin()))
		}},
		{Name: "double", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalTravel(v).Times(2))
		}},
		{Name: "double-no-angle", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(shared.ExternalDepth(v).Times(2)) }},
		{Name: "radians", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(1 / shared.InRadians(shared.AngleOf(v))))
		}},
		{Name: "rounded-pitch", Work: shared.RoundedPitch(0.001, func(v problem.Values, pitch calc.Length) (calc.Length, error) {
			h, err := calc.ExternalDepth.Of(pitch)
			return h.Times(1 / shared.AngleOf(v).Cos()), err
		})},
	}, shared.OtherAngles(shared.TravelAt)...),
})
