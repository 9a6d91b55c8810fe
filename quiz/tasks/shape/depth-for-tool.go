package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "depth-for-tool", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs: shared.Inputs(problem.ThreadInputs,
		shared.LengthInput("tool-flat", "f", 0, 0.1),
		problem.Input{Name: "side", Symbol: "side", Type: problem.InputWord, Words: []string{"outside", "inside"}}),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.0008, MM: 0.02},
	Sources:   []string{"geometry", "navy"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		side := problem.Pick(d, calc.Outside, calc.Inside)
		t := d.Thread(calc.Inch/20, calc.Inch/6)
		d.Tell(&v, t, side)
		v.SetLength("tool-flat", shared.DrawFlat(d, side, t.Pitch, 0.15))
		v.SetWord("side", side.String())
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		side := calc.Outside
		if v.Word("side") == "inside" {
			side = calc.Inside
		}
		if err := shared.OnlySide(v, side); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		pitch, flat := w.Pitch(), v.Length("tool-flat")
		if side == calc.Inside {
			problem.Step2(w, "h", calc.DepthFromBore, pitch, flat)
		} else {
			problem.Step2(w, "h", calc.DepthFromNominal, pitch, flat)
		}
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "book-613", Work: func(v problem.Values) answer.Response {
			if v.Word("side") == "inside" {
				return shared.DepthOf(calc.BasicInternal)(v)
			}
			return shared.DepthOf(calc.UnifiedExternal)(v)
		}},
		{Name: "add-flat", Work: func(v problem.Values) answer.Response {
			depth := calc.DepthFromNominal
			if v.Word("side") == "inside" {
				depth = calc.DepthFromBore
			}
			sharp, err := depth.Of(v.Pitch(), 0) // what belongs off this is put on it
			return shared.Worked(sharp+v.Length("tool-flat").Times(calc.HeightOfSharpV), err)
		}},
		{Name: "sharp-v", Work: shared.DepthOf(calc.SharpV)},
	},
})
