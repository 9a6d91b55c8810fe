package reading

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "tpi-from-metric-pitch", Stage: problem.Reading, Kind: answer.Quantity,
	Inputs:    []problem.Input{problem.ThreadInputs[1], problem.ThreadInputs[2]},
	Tolerance: answer.Tolerance{Other: 0.05},
	Systems:   []machine.System{machine.Metric},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Millimetres(1), calc.Millimetres(4.5)), calc.Outside)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		pitch := v.Pitch() // not by way of the threads per inch, where a callout tells those
		if v.Has("thread") {
			w.Length("P", "")(pitch, nil)
		}
		problem.Step1(w, "n", calc.TPIOfPitchMM, pitch)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "mult", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(calc.MillimetresPerInch * v.Pitch().Millimetres())
		}},
		{Name: "recip", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(1 / v.Pitch().Millimetres()) }},
		{Name: "ten", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(10 / v.Pitch().Millimetres()) }},
		{Name: "round25", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(25 / v.Pitch().Millimetres()) }},
		{Name: "whole", Work: func(v problem.Values) answer.Response {
			whole := calc.Round(shared.PerInch(v), 0)
			if math.Abs(whole-25/v.Pitch().Millimetres()) < 0.01 {
				return answer.NoResponse // the number that 25 mm in an inch gives as well
			}
			return answer.NumberResponse(whole)
		}},
	},
})
