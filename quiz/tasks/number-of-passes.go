package tasks

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

// passesUnit counts passes.
var passesUnit = machine.Unit{Name: "passes", One: "pass", Factor: 1, Places: 1, Count: true}

var _ = register(quiz.Task{
	Name: "number-of-passes", Stage: quiz.Infeed,
	Inputs:  inputs(totalOrThread, length("first", "i1", 0.001, 0.1)),
	Tol:     quiz.Tolerance{Else: 0.1},
	Sources: []string{"geometry"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		tellTotal(d, &v)
		v.SetLength("first", d.Length(9, 16, 22, 40))
		n := passRatio(v) * passRatio(v)
		if part := n - math.Floor(n); n < 6 || n > 21 || part < 0.25 || part > 0.75 { // near a whole number it hides how it was rounded
			return quiz.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		total := totalStep(w, v)
		ratio := w.Number("q", "T / i1", machine.Unit{Factor: 1, Places: 2})(total.Over(v.Length("first")), nil)
		w.Number("q2", "q x q", machine.CountUnit)(ratio*ratio, nil)
		n, err := calc.PassesForFirstCut(total, v.Length("first"))
		w.Number("K", "", passesUnit)(float64(n), err)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "linear", Work: func(v quiz.Values) quiz.Reply { return quiz.X(math.Ceil(passRatio(v))) }},
		{Name: "double", Work: func(v quiz.Values) quiz.Reply { return quiz.X(math.Ceil(2 * passRatio(v))) }},
		{Name: "round-down", Work: func(v quiz.Values) quiz.Reply { return quiz.X(math.Floor(passRatio(v) * passRatio(v))) }},
		{Name: "not-whole", Work: func(v quiz.Values) quiz.Reply { return quiz.X(passRatio(v) * passRatio(v)) }},
	},
})

// passRatio is how many times the first pass goes into the total.
func passRatio(v quiz.Values) float64 { return totalOf(v).Over(v.Length("first")) }
