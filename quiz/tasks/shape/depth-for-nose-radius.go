package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "depth-for-nose-radius", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.LengthInput("nose-radius", "r", 0, 0.1), noseSide),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.0008, MM: 0.02},
	Sources:   []string{"geometry", "insert-makers"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		side := problem.Pick(d, calc.Outside, calc.Inside)
		t := shared.FirstThread(d)
		d.Tell(&v, t, side)
		v.SetLength("nose-radius", drawNose(d, side, t.Pitch))
		v.SetWord("side", side.String())
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		side := noseSideOf(v)
		if err := shared.OnlySide(v, side); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		problem.Step2(w, "h", noseDepth(side), w.Pitch(), v.Length("nose-radius"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-nose", Work: lessNose(0)},
		{Name: "twice", Work: lessNose(2)},
		{Name: "add-nose", Work: lessNose(-1)},
		{Name: "other-side", Work: func(v problem.Values) answer.Response {
			return shared.Worked(noseDepth(calc.Inside-noseSideOf(v)).Of(v.Pitch(), v.Length("nose-radius")))
		}},
		{Name: "book-depth", Work: func(v problem.Values) answer.Response {
			if v.Word("side") == "inside" {
				return shared.DepthOf(calc.BasicInternal)(v)
			}
			return shared.DepthOf(calc.UnifiedExternal)(v)
		}},
		{Name: "sharp-v", Work: shared.DepthOf(calc.SharpV)},
	},
})

// noseDepth is the formula of the depth on a side.
func noseDepth(side calc.Side) calc.Formula[func(pitch, nose calc.Length) (calc.Length, error)] {
	if side == calc.Inside {
		return calc.NoseDepthFromBore
	}
	return calc.NoseDepthFromNominal
}

// lessNose is the error of taking so many radii off the depth of a sharp tool.
func lessNose(radii float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		sharp, err := noseDepth(noseSideOf(v)).Of(v.Pitch(), 0)
		return shared.Worked(sharp-v.Length("nose-radius").Times(radii), err)
	}
}
