package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "next-start", Stage: quiz.Passes,
	Inputs: inputs(quiz.ThreadInputs,
		quiz.Input{Name: "lead", Symbol: "l", Is: quiz.ALength, Low: 0.02, High: 4, Group: "thread"},
		quiz.Input{Name: "starts", Symbol: "z", Is: quiz.ACount, Low: 2, High: 12}),
	Tol:     quiz.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources: []string{"arithmetic"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		starts := quiz.Pick(d, 2, 3, 3, 4)
		t := d.Thread(calc.Inch/20, calc.Inch/8)
		t.Starts = starts
		if t.Nominal < 0.5 {
			return quiz.Values{}
		}
		switch {
		case d.Level != quiz.DeriveFirst:
			tellStarts(d, &v, t)
		case d.System == machine.Metric:
			v.SetLength("lead", calc.Millimetres(calc.Round(t.Lead().Millimetres(), 3)))
		default: // a lead that four places hold exactly
			v.SetLength("lead", calc.Inches(calc.Round(quiz.Pick(d, 0.05, 0.0625, 0.1, 0.125)*float64(starts), 4)))
		}
		v.Set("starts", float64(starts))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := sameStarts(v); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		var pitch calc.Length
		if v.Has("lead") {
			pitch = w.Length("P", "l / z")(startPitch(v), nil)
		} else {
			pitch = w.Pitch()
		}
		w.Length("m", "P")(pitch, nil)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "lead", Work: func(v quiz.Values) quiz.Reply { return quiz.L(startPitch(v).Times(v.X("starts"))) }},
		{Name: "half-lead", Work: func(v quiz.Values) quiz.Reply {
			if v.Count("starts") == 2 {
				return quiz.NoAnswer // with two starts half a lead is right
			}
			return quiz.L(startPitch(v).Times(v.X("starts") / 2))
		}},
		{Name: "per-start", Work: func(v quiz.Values) quiz.Reply { return quiz.L(startPitch(v).Times(1 / v.X("starts"))) }},
	},
})

// startPitch is the pitch, however the thread was told.
func startPitch(v quiz.Values) calc.Length {
	if v.Has("lead") {
		return v.Length("lead").Times(1 / v.X("starts"))
	}
	return v.Pitch()
}
