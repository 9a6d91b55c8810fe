package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "room-to-start", Stage: quiz.Passes, Gate: true,
	Inputs: inputs(quiz.ThreadInputs, rpmInput,
		quiz.Input{Name: "seconds", Symbol: "y", Is: quiz.APlain, Low: 0.1, High: 60}),
	Scrap:   quiz.ScrapLow,
	Tol:     quiz.Tolerance{Inch: 0.005, MM: 0.12},
	Sources: []string{"arithmetic", "common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/20, calc.Inch/6), calc.Outside)
		rpm := drawSpeed(d)
		v.Set("rpm", float64(rpm))
		v.Set("seconds", quiz.Pick(d, 1.5, 2, 2.5, 3))
		if halfway(v.Pitch().Inches()*v.X("rpm")/60*v.X("seconds"), d.System.Length()) || tooFast(v.Pitch(), rpm) {
			return quiz.Values{}
		}
		jobAt(d, &v, calc.Outside, rpm)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := oneStart(v); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		w.Length("x", "v / 60 x P x y")(calc.CarriageTravel(speedOf(v), w.Pitch(), v.X("seconds")))
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "no-60", Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch().Times(v.X("rpm") * v.X("seconds"))) }},
		{Name: "one-pitch", Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch()) }},
		{Name: "tpi", Work: func(v quiz.Values) quiz.Reply { return quiz.L(upsideDown(v).Times(v.X("rpm") / 60 * v.X("seconds"))) }},
		{Name: "no-time", Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch().Times(v.X("rpm") / 60)) }},
	},
})
