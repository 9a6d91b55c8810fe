package reading

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "multi-start-lead", Stage: problem.Reading, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.StartsInput),
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources:   []string{"b1-1"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		t.Starts = problem.Pick(d, 2, 3, 4)
		ways := []string{"pitch"}
		switch {
		case d.Level != problem.NumbersGiven && t.Metric:
			ways = []string{"previous"}
		case d.Level != problem.NumbersGiven:
			ways = []string{"tpi", "tpi", "previous"}
		}
		d.TellAs(&v, t, calc.Outside, ways...)
		v.Set("starts", float64(t.Starts))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		shared.LeadStep(w, v, w.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "pitch", Work: func(v problem.Values) answer.Response {
			if shared.StartsOf(v) == 1 {
				return answer.NoResponse
			}
			return answer.LengthResponse(v.Pitch())
		}},
		{Name: "div", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(v.Pitch().Times(1 / shared.StartsOf(v)))
		}},
		{Name: "tpi-mult", Work: func(v problem.Values) answer.Response {
			unit := v.System.Length()
			return answer.NumberResponse(shared.StartsOf(v) / (v.Pitch().Inches() * unit.Factor) / unit.Factor)
		}},
	},
})
