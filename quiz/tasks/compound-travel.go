package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "compound-travel", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    inputs(problem.ThreadInputs, compoundAngle...),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"compound-feeds", "navy"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/13, calc.Inch/6), calc.Outside)
		tellAngle(d, &v)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := only(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		h := w.Length("h", "0.613435 x P")(calc.RadialDepthOfForm(w.Pitch(), calc.UnifiedExternal))
		a := angleStep(w, v)
		w.Length("c", "h / cos(a)")(calc.CompoundTravel(h, a))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-angle", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(externalDepth(v)) }},
		{Name: "times-cos", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(externalDepth(v).Times(angleOf(v).Cos()))
		}},
		// One number, two causes: the wrong button, or the angle taken from the bed.
		{Name: "sin-or-ref", SameResultAs: "sin-or-ref", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(externalDepth(v).Times(1 / angleOf(v).Sin()))
		}},
		{Name: "double", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(externalDepth(v).Times(2 / angleOf(v).Cos()))
		}},
		{Name: "double-no-angle", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(externalDepth(v).Times(2)) }},
	},
})
