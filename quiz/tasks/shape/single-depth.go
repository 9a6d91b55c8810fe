package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "single-depth", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    problem.ThreadInputs,
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources:   []string{"navy", "b1-1"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/28, calc.Inch/5), calc.Outside)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		problem.Step1(w, "h", calc.ExternalDepth, w.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "double", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(shared.ExternalDepth(v).Times(2)) }},
		{Name: "sharp-v", Work: shared.DepthOf(calc.SharpV)},
		{Name: "american-national", Convention: true, Work: shared.DepthOf(calc.AmericanNational)},
		{Name: "basic", Convention: true, Work: shared.DepthOf(calc.BasicInternal)},
		{Name: "pitch", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Pitch()) }},
		{Name: "no-866", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(1 / calc.HeightOfSharpV))
		}},
		{Name: "rounded-pitch", Work: shared.RoundedPitch(0.0005, func(_ problem.Values, pitch calc.Length) (calc.Length, error) {
			return calc.ExternalDepth.Of(pitch)
		})},
	},
})
