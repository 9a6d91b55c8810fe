package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "flank-width", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: shared.Inputs(problem.ThreadInputs,
		problem.Input{Name: "depth", Symbol: "h", Type: problem.InputLength, Low: 0.002, High: 0.5, Group: "thread"},
		shared.LengthInput("tool-flat", "f", 0, 0.1)),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		flat := t.Pitch.Times(1.0 / 6) // the tip that goes with the factor 0.613
		if d.Level == problem.NumbersGiven {
			h := t.Pitch.Times(calc.UnifiedExternal.Factor() * d.Steps(0.6, 0.98, 0.02))
			v.SetLength("depth", shared.RoundLength(d, h))
		} else {
			d.Tell(&v, t, calc.Outside)
		}
		v.SetLength("tool-flat", shared.RoundLength(d, flat))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		h := chipDepth(v)
		if !v.Has("depth") {
			h = problem.Step1(w, "h", calc.ExternalDepth, w.Pitch())
		}
		problem.Step1(w, "b", calc.FlankWidth, h)
		problem.Step2(w, "w", calc.ChipStraightIn, h, v.Length("tool-flat"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "half", Work: func(v problem.Values) answer.Response { return flanks(v, 1) }},
		{Name: "same", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(chipDepth(v)) }},
		{Name: "four", Work: func(v problem.Values) answer.Response { return flanks(v, 4) }},
		{Name: "no-flat", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(flank(v).Times(2))
		}},
		{Name: "radians", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(chipDepth(v).Times(2/shared.InRadians(30)) + v.Length("tool-flat"))
		}},
		{Name: "no-cos", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(chipDepth(v).Times(2) + v.Length("tool-flat"))
		}},
	},
})

// chipDepth is the depth of the tool, given or by the factor of the form.
func chipDepth(v problem.Values) calc.Length {
	if v.Has("depth") {
		return v.Length("depth")
	}
	return shared.ExternalDepth(v)
}

// flanks is the width of a chip that lies along so many flanks, and the flat.
func flanks(v problem.Values, n float64) answer.Response {
	return answer.LengthResponse(flank(v).Times(n) + v.Length("tool-flat"))
}

// flank is the width of the chip on one flank.
func flank(v problem.Values) calc.Length {
	b, _ := calc.FlankWidth.Of(chipDepth(v)) // the key has been worked out: no error here
	return b
}
