package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "infeed-from-wires", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs: shared.Inputs([]problem.Input{
		{Name: "excess", Symbol: "o", Type: problem.InputLength, Low: 0.0005, High: 0.2, Group: "reading"},
		{Name: "reading", Symbol: "M", Type: problem.InputLength, Low: 0.05, High: 7, Group: "reading"},
		{Name: "target", Symbol: "M0", Type: problem.InputLength, Low: 0.05, High: 7, Extra: true}, // goes with reading
	}, shared.CompoundAngle...),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.0004, MM: 0.01},
	Sources:   []string{"geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		excess := calc.Inches(d.Steps(0.012, 0.03, 0.0005)) // below that, dropping the cosine hides
		if d.System == machine.Metric {
			excess = calc.Millimetres(d.Steps(0.3, 0.76, 0.01))
		}
		if d.Level == problem.NumbersGiven {
			v.SetLength("excess", excess)
		} else {
			t := shared.FirstThread(d)
			pitchDiameter, err := middlePitchDiameter(d, v, t)
			if err != nil {
				return problem.Values{}
			}
			wires, err := calc.WiresFor(t.Pitch)
			if err != nil {
				return problem.Values{}
			}
			over, err := calc.ReadingOverWires.Of(pitchDiameter, wires.Best, t.Pitch)
			if err != nil {
				return problem.Values{}
			}
			target := shared.AsPrinted(d, over)
			v.SetLength("target", target)
			v.SetLength("reading", shared.AsPrinted(d, target+excess))
		}
		shared.TellAngle(d, &v)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		excess := excessOf(v)
		if v.Has("reading") {
			if !v.Has("target") {
				return problem.Working{}, &calc.InputError{What: "target", Got: "not given", Want: "the reading that is wanted"}
			}
			if excess <= 0 {
				return problem.Working{}, &calc.InputError{What: "target", Got: calc.LengthText(v.Length("target")), Want: "one below the reading; else there is nothing to take off"}
			}
			w.Length("o", "M - M0")(excess, nil)
		}
		h := w.Length("h", "o / 2")(excess.Times(0.5), nil)
		problem.Step2(w, "c", calc.TravelForDepth, h, shared.AngleStep(w, v))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-half", Work: func(v problem.Values) answer.Response {
			return shared.Worked(calc.TravelForDepth.Of(excessOf(v), shared.AngleOf(v)))
		}},
		{Name: "no-cos", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(excessOf(v).Times(0.5)) }},
		{Name: "raw", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(excessOf(v)) }},
		{Name: "times", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(excessOf(v).Times(0.5).Times(shared.AngleOf(v).Cos()))
		}},
		{Name: "radians", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(excessOf(v).Times(0.5 / shared.InRadians(shared.AngleOf(v))))
		}},
	},
})

// excessOf is how far the reading over wires stands above the one wanted.
func excessOf(v problem.Values) calc.Length {
	if v.Has("excess") {
		return v.Length("excess")
	}
	return v.Length("reading") - v.Length("target")
}
