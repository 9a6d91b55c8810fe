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
		t := shared.FirstThread(d)
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
			sharp, err := depthFrom(v, false).Of(v.Pitch(), 0) // what belongs off this is put on it
			return shared.Worked(sharp+v.Length("tool-flat").Times(calc.HeightOfSharpV), err)
		}},
		{Name: "no-866", Work: func(v problem.Values) answer.Response {
			sharp, err := depthFrom(v, false).Of(v.Pitch(), 0)
			return shared.Worked(sharp-v.Length("tool-flat"), err)
		}},
		{Name: "other-side", Work: func(v problem.Values) answer.Response {
			return shared.Worked(depthFrom(v, true).Of(v.Pitch(), v.Length("tool-flat")))
		}},
		{Name: "sharp-v", Work: shared.DepthOf(calc.SharpV)},
	},
})

// depthFrom is the formula for the side of the thread, or for the other one.
func depthFrom(v problem.Values, other bool) calc.Formula[func(pitch, flat calc.Length) (calc.Length, error)] {
	if (v.Word("side") == "inside") != other {
		return calc.DepthFromBore
	}
	return calc.DepthFromNominal
}
