package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "depth-for-tool", Stage: quiz.Shape,
	Inputs: inputs(quiz.ThreadInputs,
		length("tool-flat", "f", 0, 0.1),
		quiz.Input{Name: "side", Symbol: "side", Is: quiz.AWord, Words: []string{"outside", "inside"}}),
	Scrap:   quiz.ScrapHigh,
	Tol:     quiz.Tolerance{Inch: 0.0008, MM: 0.02},
	Sources: []string{"geometry", "navy"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		side := quiz.Pick(d, calc.Outside, calc.Inside)
		t := d.Thread(calc.Inch/20, calc.Inch/4)
		d.Tell(&v, t, side)
		flat := calc.Thou.Times(d.Steps(2, 5+t.Pitch.Times(0.2).Over(calc.Thou), 1))
		if d.System == quiz.Metric {
			flat = calc.Millimetres(d.Steps(0.06, 0.1+t.Pitch.Times(0.2).Millimetres(), 0.01))
		}
		v.SetLength("tool-flat", flat)
		v.SetWord("side", side.String())
		d.Job(&v, side)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		pitch, flat := w.Pitch(), v.Length("tool-flat")
		if v.Word("side") == "inside" {
			w.Length("h", "0.649519 x P - 0.866025 x f")(calc.RadialDepthFromBasicBore(pitch, flat))
		} else {
			w.Length("h", "0.757772 x P - 0.866025 x f")(calc.RadialDepthFromNominal(pitch, flat))
		}
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "book-613", Work: func(v quiz.Values) quiz.Reply {
			if v.Word("side") == "inside" {
				return depthOf(calc.BasicInternal)(v)
			}
			return depthOf(calc.UnifiedExternal)(v)
		}},
		{Name: "add-flat", Work: func(v quiz.Values) quiz.Reply {
			h := v.Pitch().Times(calc.HeightOfSharpV * 7 / 8)
			if v.Word("side") == "inside" {
				h = v.Pitch().Times(calc.HeightOfSharpV * 3 / 4)
			}
			return quiz.L(h + v.Length("tool-flat").Times(calc.HeightOfSharpV))
		}},
		{Name: "sharp-v", Work: depthOf(calc.SharpV)},
	},
})
