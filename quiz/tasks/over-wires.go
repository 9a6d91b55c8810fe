package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "over-wires", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs: inputs(problem.ThreadInputs,
		length("pitch-diameter", "E", 0.05, 6), wireInput,
		problem.Input{Name: "nominal", Symbol: "D", Type: problem.InputLength, Low: 0.06, High: 6, Extra: true}),
	Tolerance: answer.Tolerance{Inch: 0.0006, MM: 0.015},
	Sources:   []string{"handbook", "navy", "ordnance"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := d.Thread(calc.Inch/20, calc.Inch/6)
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
		if err := only(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		w.Length("M", "E + 3 x W - 0.866025 x P")(calc.OverWires(v.Length("pitch-diameter"), v.Length("wire"), w.Pitch()))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "plus", Work: func(v problem.Values) answer.Response {
			return overWires(v, v.Length("pitch-diameter"), 3, calc.HeightOfSharpV)
		}},
		{Name: "two-wires", Work: func(v problem.Values) answer.Response {
			return overWires(v, v.Length("pitch-diameter"), 2, -calc.HeightOfSharpV)
		}},
		{Name: "mix-d", Work: func(v problem.Values) answer.Response {
			return overWires(v, v.Length("pitch-diameter"), 3, -calc.HeightOfSharpV*7/4)
		}},
		{Name: "use-d", Work: func(v problem.Values) answer.Response {
			switch {
			case v.Has("thread"):
				return overWires(v, v.Thread("thread").Nominal, 3, -calc.HeightOfSharpV)
			case v.Has("nominal"):
				return overWires(v, v.Length("nominal"), 3, -calc.HeightOfSharpV)
			}
			return answer.NoResponse
		}},
	},
})

// wireInput is the diameter of the measuring wires.
var wireInput = length("wire", "W", 0.005, 0.6)

// tellMeasured tells a thread that is being measured: plainly, or by its callout.
func tellMeasured(d *problem.Draw, v *problem.Values, t calc.Designation) {
	if d.Level == problem.NumbersGiven {
		d.Tell(v, t, calc.Outside)
		return
	}
	d.TellAs(v, t, calc.Outside, "callout")
}

// middlePitchDiameter is the middle of the limits of the thread as it was told, or
// of the usual class where no class was told.
func middlePitchDiameter(d *problem.Draw, v problem.Values, t calc.Designation) (calc.Length, error) {
	l, err := calc.LimitsOf(withClass(v, t))
	return asPrinted(d, l.Pitch.Middle()), err
}

// withClass is a thread with the class it was told with, or the usual one.
func withClass(v problem.Values, t calc.Designation) calc.Designation {
	switch {
	case v.Has("thread"):
		return v.Thread("thread")
	case t.Metric:
		t.Class = "6g"
	default:
		t.Class = "2A"
	}
	return t
}

// drawWire draws a wire that can be used: the best one as sets are marked, or one
// a little larger that was at hand.
func drawWire(d *problem.Draw, pitch calc.Length) calc.Length {
	wires, _ := calc.WiresFor(pitch) // a pitch from the lists of threads
	if d.Level == problem.NumbersGiven || d.IntN(2) == 0 {
		return asPrinted(d, wires.Best)
	}
	return roundLength(d, wires.Best.Times(d.Steps(1.02, 1.2, 0.02)))
}

// overWires adds wires and a share of the pitch to a diameter: a slip's reading.
func overWires(v problem.Values, diameter calc.Length, wires, share float64) answer.Response {
	return answer.LengthResponse(diameter + v.Length("wire").Times(wires) + v.Pitch().Times(share))
}
