package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "fastest-for-the-gap", Stage: quiz.SetUp, Gate: true,
	Inputs: inputs(quiz.ThreadInputs, length("gap", "g", 0.01, 10),
		quiz.Input{Name: "seconds", Symbol: "y", Is: quiz.APlain, Low: 0.1, High: 60}),
	Scrap:   quiz.ScrapHigh,
	Tol:     quiz.Tolerance{Else: 1, NoMore: true},
	Sources: []string{"arithmetic"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/20, calc.Inch/6), calc.Outside)
		v.SetLength("gap", drawGap(d))
		v.Set("seconds", quiz.Pick(d, 1.5, 2, 2.5, 3))
		// A highest speed must not have been rounded up.
		if rpm := fastest(v); rpm < 25 || rpm > 250 || calc.Round(rpm, 0) > rpm+1e-9 {
			return quiz.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := oneStart(v); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		speed, err := calc.FastestFor(v.Length("gap"), w.Pitch(), v.X("seconds"))
		w.Number("v", "60 x g / (P x y)", rpmUnit)(speed.RPM(), err)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		// One size of number, two causes, as in time-to-shoulder.
		{Name: "no-60", Twin: "no-60", Work: func(v quiz.Values) quiz.Reply { return quiz.X(fastest(v) / 60) }},
		{Name: "mult-t", Work: func(v quiz.Values) quiz.Reply { return quiz.X(fastest(v) * v.X("seconds") * v.X("seconds")) }},
		{Name: "div-n", Work: func(v quiz.Values) quiz.Reply {
			return apartFrom(fastest(v)/60, 60*v.Length("gap").Over(upsideDown(v))/v.X("seconds"), 1.6)
		}},
		{Name: "no-time", Work: func(v quiz.Values) quiz.Reply { return quiz.X(fastest(v) * v.X("seconds")) }},
	},
})

// fastest is the key, and 0 where there is none.
func fastest(v quiz.Values) float64 {
	speed, _ := calc.FastestFor(v.Length("gap"), v.Pitch(), v.X("seconds")) // Work reports the error
	return speed.RPM()
}
