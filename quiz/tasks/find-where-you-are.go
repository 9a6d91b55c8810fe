package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "find-where-you-are", Stage: quiz.Infeed,
	Inputs: []quiz.Input{length("total", "T", 0.01, 0.5), length("dial", "r", 0, 0.5),
		{Name: "believed", Symbol: "b", Is: quiz.ALength, Low: 0, High: 0.5, Extra: true},
		{Name: "turn", Symbol: "R", Is: quiz.ALength, Low: 0.04, High: 0.5, Extra: true}},
	Tol:     quiz.Tolerance{Inch: 0.0005, MM: 0.012},
	Scrap:   quiz.ScrapHigh,
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		dial := d.Length(30, 80, 80, 190)
		v.SetLength("dial", dial)
		v.SetLength("believed", dial-d.Length(6, 22, 16, 60))
		v.SetLength("total", dial+d.Length(8, 35, 20, 90))
		v.SetLength("turn", turnAbove(d))
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		w.Length("L", "T - r")(v.Length("total")-v.Length("dial"), nil)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "memory", Work: func(v quiz.Values) quiz.Reply { return believed(v, func(r, b float64) float64 { return b }) }},
		{Name: "average", Work: func(v quiz.Values) quiz.Reply {
			return believed(v, func(r, b float64) float64 { return (r + b) / 2 })
		}},
		{Name: "adds-both", Work: func(v quiz.Values) quiz.Reply { return believed(v, func(r, b float64) float64 { return r + b }) }},
	},
})

// believed is what is left when someone takes the slide to be elsewhere.
func believed(v quiz.Values, at func(dial, believed float64) float64) quiz.Reply {
	if !v.Has("believed") {
		return quiz.NoAnswer
	}
	return quiz.X(v.X("total") - at(v.X("dial"), v.X("believed")))
}

// turnAbove is a dial turn that the reading has not yet gone round.
func turnAbove(d *quiz.Draw) calc.Length {
	if d.System == quiz.Metric {
		return calc.Millimetres(quiz.Pick(d, 2.0, 2.5, 3.0))
	}
	return calc.Inches(quiz.Pick(d, 0.100, 0.125, 0.200))
}
