package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "tool-nose-flat", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    problem.ThreadInputs,
	Tolerance: answer.Tolerance{Inch: 0.0007, MM: 0.018},
	Sources:   []string{"geometry", "school-handout"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, shared.FirstThread(d), calc.Outside)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		problem.Step1(w, "f", calc.NationalFlat, w.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "quarter", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Pitch().Times(1.0 / 4)) }},
		{Name: "sixth", Convention: true, Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Pitch().Times(1.0 / 6)) }},
		// One eighth of the unit the learner works in.
		{Name: "eighth-inch", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(1.0 / 8 / v.System.Length().Factor)
		}},
		{Name: "sharp", Work: func(problem.Values) answer.Response { return answer.NumberResponse(0) }},
		{Name: "depth8", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v).Times(1.0 / 8))
		}},
	},
})
