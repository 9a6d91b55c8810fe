package tasks

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "threading-speed-metric", Stage: quiz.SetUp, Gate: true,
	Inputs: inputs(turnedSize,
		quiz.Input{Name: "turning-speed", Symbol: "V", Is: quiz.APlain, Low: 3, High: 300}),
	Scrap:   quiz.ScrapHigh,
	Tol:     quiz.Tolerance{Share: 0.05},
	Systems: []machine.System{machine.Metric},
	Sources: []string{"tm-1-420", "common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		if !tellSize(d, &v, calc.Millimetres(d.Steps(10, 50, 1)), calc.Millimetres(12), calc.Millimetres(42)) {
			return quiz.Values{}
		}
		v.Set("turning-speed", d.Steps(18, 34, 1))
		if tooQuick(v) {
			return quiz.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		return threadingSpeed(v, "1000 x V / (3.14159265 x D)", calc.MetresPerMinute(v.X("turning-speed")))
	},
	Slips: []quiz.Slip{
		{Name: "inch", Work: func(v quiz.Values) quiz.Reply { return quiz.X(12 * metresOverMillimetres(v) / math.Pi / 4) }},
		{Name: "no-pi", Work: func(v quiz.Values) quiz.Reply { return quiz.X(1000 * metresOverMillimetres(v) / 4) }},
		{Name: "no-quarter", Work: func(v quiz.Values) quiz.Reply { return quiz.X(1000 * metresOverMillimetres(v) / math.Pi) }},
		{Name: "radius", Work: func(v quiz.Values) quiz.Reply { return quiz.X(2 * 1000 * metresOverMillimetres(v) / math.Pi / 4) }},
	},
})

func metresOverMillimetres(v quiz.Values) float64 {
	return v.X("turning-speed") / sizeOf(v).Millimetres()
}
