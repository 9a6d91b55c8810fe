package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "over-wires", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs: shared.Inputs(problem.ThreadInputs,
		shared.LengthInput("pitch-diameter", "E", 0.05, 6), wireInput,
		problem.Input{Name: "nominal", Symbol: "D", Type: problem.InputLength, Low: 0.06, High: 6, Extra: true}),
	Tolerance: answer.Tolerance{Inch: 0.0006, MM: 0.015},
	Sources:   []string{"handbook", "navy", "ordnance"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		tellMeasured(d, &v, t)
		if d.Level == problem.NumbersGiven {
			v.SetLength("nominal", t.Nominal)
		}
		target, err := middlePitchDiameter(d, v, t)
		if err != nil {
			return problem.Values{}
		}
		v.SetLength("pitch-diameter", target)
		v.SetLength("wire", drawWire(d, t.Pitch))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		problem.Step3(w, "M", calc.ReadingOverWires, v.Length("pitch-diameter"), v.Length("wire"), w.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "plus", Work: func(v problem.Values) answer.Response {
			return overWires(v, v.Length("pitch-diameter"), 3, calc.HeightOfSharpV)
		}},
		{Name: "two-wires", Work: func(v problem.Values) answer.Response {
			return overWires(v, v.Length("pitch-diameter"), 2, -calc.HeightOfSharpV)
		}},
		{Name: "no-866", Work: func(v problem.Values) answer.Response { return overWires(v, v.Length("pitch-diameter"), 3, -1) }},
		{Name: "mix-d", Work: func(v problem.Values) answer.Response {
			return overWires(v, v.Length("pitch-diameter"), 3, -calc.HeightOfSharpV*7/4)
		}},
		{Name: "use-d", Work: func(v problem.Values) answer.Response {
			switch {
			case v.Has("thread"):
				return shared.Worked(calc.ReadingOverWires.Of(v.Thread("thread").Nominal, v.Length("wire"), v.Pitch()))
			case v.Has("nominal"):
				return shared.Worked(calc.ReadingOverWires.Of(v.Length("nominal"), v.Length("wire"), v.Pitch()))
			}
			return answer.NoResponse
		}},
	},
})
