package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "sideways-shift", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    inputs(problem.ThreadInputs, compoundAngle...),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"geometry", "navy"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/16, calc.Inch/6), calc.Outside)
		tellAngle(d, &v)
		if tied(d, externalDepth(v).Times(angleOf(v).Tan())) {
			return problem.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := only(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		h := w.Length("h", "0.613435 x P")(calc.RadialDepthOfForm(w.Pitch(), calc.UnifiedExternal))
		w.Length("b", "h x tan(a)")(calc.SidewaysShift(h, angleStep(w, v)))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "none", Work: func(problem.Values) answer.Response { return answer.NumberResponse(0) }},
		{Name: "sin", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(externalDepth(v).Times(angleOf(v).Sin()))
		}},
		// One number, two causes: divided by tan, or the angle taken from the bed.
		{Name: "cot", SameResultAs: "cot", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(externalDepth(v).Times(1 / angleOf(v).Tan()))
		}},
		{Name: "depth", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(externalDepth(v)) }},
		{Name: "travel", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(externalDepth(v).Times(1 / angleOf(v).Cos()))
		}},
	},
})
