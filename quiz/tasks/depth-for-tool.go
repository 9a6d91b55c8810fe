package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "depth-for-tool", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs: inputs(problem.ThreadInputs,
		length("tool-flat", "f", 0, 0.1),
		problem.Input{Name: "side", Symbol: "side", Type: problem.InputWord, Words: []string{"outside", "inside"}}),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.0008, MM: 0.02},
	Sources:   []string{"geometry", "navy"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		side := problem.Pick(d, calc.Outside, calc.Inside)
		t := d.Thread(calc.Inch/20, calc.Inch/6)
		d.Tell(&v, t, side)
		v.SetLength("tool-flat", drawFlat(d, side, t.Pitch, 0.15))
		v.SetWord("side", side.String())
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		side := calc.Outside
		if v.Word("side") == "inside" {
			side = calc.Inside
		}
		if err := only(v, side); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		pitch, flat := w.Pitch(), v.Length("tool-flat")
		if side == calc.Inside {
			w.Length("h", "0.649519 x P - 0.866025 x f")(calc.RadialDepthFromBasicBore(pitch, flat))
		} else {
			w.Length("h", "0.757772 x P - 0.866025 x f")(calc.RadialDepthFromNominal(pitch, flat))
		}
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "book-613", Work: func(v problem.Values) answer.Response {
			if v.Word("side") == "inside" {
				return depthOf(calc.BasicInternal)(v)
			}
			return depthOf(calc.UnifiedExternal)(v)
		}},
		{Name: "add-flat", Work: func(v problem.Values) answer.Response {
			h := v.Pitch().Times(calc.HeightOfSharpV * 7 / 8)
			if v.Word("side") == "inside" {
				h = v.Pitch().Times(calc.HeightOfSharpV * 3 / 4)
			}
			return answer.LengthResponse(h + v.Length("tool-flat").Times(calc.HeightOfSharpV))
		}},
		{Name: "sharp-v", Work: depthOf(calc.SharpV)},
	},
})

// drawFlat draws the flat of a tool that can make the thread: from a share of the
// widest one up, in whole thousandths or hundredths of a millimetre.
func drawFlat(d *problem.Draw, side calc.Side, pitch calc.Length, from float64) calc.Length {
	widest, _ := calc.WidestFlat(side, pitch) // a pitch from the lists of threads
	low, high := widest.Times(from), widest.Times(0.98)
	if d.System == machine.Metric {
		return calc.Millimetres(d.Steps(calc.Round(low.Millimetres()+0.005, 2), calc.Round(high.Millimetres()-0.005, 2), 0.01))
	}
	return calc.Inches(d.Steps(calc.Round(low.Inches()+0.0005, 3), calc.Round(high.Inches()-0.0005, 3), 0.001))
}

// sideOf is the side that a designation's class names, or the one given where it
// names none.
func sideOf(d calc.Designation, otherwise string) string {
	if side, ok := d.Side(); ok {
		return side.String()
	}
	return otherwise
}

// wrongSide is the error for a thread of the other side than a task is about.
func wrongSide(d calc.Designation, wanted string) error {
	return &calc.InputError{What: "thread", Got: calc.Quoted(d.String()), Want: "an " + wanted + " thread; this one is " + sideOf(d, "")}
}

// only refuses a designation of the other side.
func only(v problem.Values, side calc.Side) error {
	if v.Has("thread") && sideOf(v.Thread("thread"), side.String()) != side.String() {
		return wrongSide(v.Thread("thread"), side.String())
	}
	return nil
}
