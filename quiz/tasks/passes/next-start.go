package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "next-start", Stage: problem.Passes, Kind: answer.Quantity,
	Inputs: shared.Inputs(problem.ThreadInputs,
		problem.Input{Name: "lead", Symbol: "l", Type: problem.InputLength, Low: 0.02, High: 4, Group: "thread"},
		problem.Input{Name: "starts", Symbol: "z", Type: problem.InputCount, Low: 2, High: 12}),
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		starts := problem.Pick(d, 2, 3, 4)
		t := shared.FirstThread(d)
		t.Starts = starts
		if t.Nominal < 0.5 {
			return problem.Values{}
		}
		switch {
		case d.Level != problem.DeriveFirst:
			shared.TellStarts(d, &v, t)
		case d.System == machine.Metric:
			v.SetLength("lead", calc.Millimetres(calc.Round(t.Lead().Millimetres(), 3)))
		default: // a lead that four places hold exactly
			v.SetLength("lead", calc.Inches(problem.Pick(d, 0.125, 0.15, 0.2, 0.225, 0.25, 0.3, 0.375, 0.4, 0.5)))
			if pitch := v.X("lead") / float64(starts); pitch < 0.04 || pitch > 0.17 {
				return problem.Values{}
			}
		}
		v.Set("starts", float64(starts))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.SameStarts(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		var pitch calc.Length
		if v.Has("lead") {
			pitch = problem.Step2(w, "P", calc.PitchOfStarts, v.Length("lead"), v.Count("starts"))
		} else {
			pitch = w.Pitch()
		}
		w.Length("m", "P")(pitch, nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "lead", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(startPitch(v).Times(v.X("starts")))
		}},
		{Name: "half-lead", Work: func(v problem.Values) answer.Response {
			if v.Count("starts") == 2 {
				return answer.NoResponse // with two starts half a lead is right
			}
			return answer.LengthResponse(startPitch(v).Times(v.X("starts") / 2))
		}},
		{Name: "per-start", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(startPitch(v).Times(1 / v.X("starts")))
		}},
	},
})

// startPitch is the pitch, however the thread was told.
func startPitch(v problem.Values) calc.Length {
	if v.Has("lead") {
		pitch, _ := calc.PitchOfStarts.Of(v.Length("lead"), v.Count("starts")) // Work reports the error
		return pitch
	}
	return v.Pitch()
}
