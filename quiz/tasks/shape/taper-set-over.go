package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "taper-set-over", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs: []problem.Input{shared.LengthInput("between-centres", "L", 1, 60),
		{Name: "thread-length", Symbol: "l", Type: problem.InputLength, Low: 0.1, High: 6, Extra: true}},
	Tolerance: answer.Tolerance{Inch: 0.0015, MM: 0.04},
	Sources:   []string{"b1-20-1", "geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		between, thread := calc.Inches(d.Steps(4, 18, 0.25)), calc.Inches(d.Steps(0.5, 1.75, 0.125))
		if d.System == machine.Metric {
			between, thread = calc.Millimetres(d.Steps(100, 450, 5)), calc.Millimetres(d.Steps(12, 44, 1))
		}
		v.SetLength("between-centres", between)
		v.SetLength("thread-length", thread)
		v.Phrase("job", "job-pump-part") // it runs between centres, as the question says
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		problem.Step1(w, "s", calc.PipeSetOver, v.Length("between-centres"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "on-diameter", Work: setOverOf("between-centres", 1.0/16)},
		{Name: "half-again", Work: setOverOf("between-centres", 1.0/64)},
		{Name: "thread-only", Work: setOverOf("thread-length", 1.0/32)},
		{Name: "thread-on-diameter", Work: setOverOf("thread-length", 1.0/16)},
		{Name: "for-a-foot", Work: func(v problem.Values) answer.Response {
			if v.Length("between-centres") > 11*calc.Inch && v.Length("between-centres") < 13*calc.Inch {
				return answer.NoResponse // for a foot it is right
			}
			return answer.LengthResponse(calc.Inches(0.375)) // half of the 3/4 in taper to the foot
		}},
	},
})

// setOverOf is the error of a share of a length.
func setOverOf(input string, share float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		if !v.Has(input) {
			return answer.NoResponse
		}
		return answer.LengthResponse(v.Length(input).Times(share))
	}
}
