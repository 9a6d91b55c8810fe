package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "pitch-diameter-from-wires", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.LengthInput("reading", "M", 0.05, 7), wireInput),
	Tolerance: answer.Tolerance{Inch: 0.0006, MM: 0.015},
	Sources:   []string{"handbook", "navy", "ordnance"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		tellMeasured(d, &v, t)
		wire := drawWire(d, t.Pitch)
		v.SetLength("wire", wire)
		target, err := middlePitchDiameter(d, v, t)
		if err != nil {
			return problem.Values{}
		}
		reading, err := calc.ReadingOverWires.Of(target, wire, t.Pitch)
		if err != nil {
			return problem.Values{}
		}
		v.SetLength("reading", shared.AsPrinted(d, reading+calc.Inches(d.Steps(-0.003, 0.012, 0.0001))))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		problem.Step3(w, "E", calc.DiameterOverWires, v.Length("reading"), v.Length("wire"), w.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "minus", Work: func(v problem.Values) answer.Response {
			return overWires(v, v.Length("reading"), -3, -calc.HeightOfSharpV)
		}},
		{Name: "no-p", Work: func(v problem.Values) answer.Response { return overWires(v, v.Length("reading"), -3, 0) }},
		{Name: "no-866", Work: func(v problem.Values) answer.Response { return overWires(v, v.Length("reading"), -3, 1) }},
		{Name: "as-read", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Length("reading")) }},
		{Name: "two", Work: func(v problem.Values) answer.Response {
			return overWires(v, v.Length("reading"), -2, calc.HeightOfSharpV)
		}},
	},
})
