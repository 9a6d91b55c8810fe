package infeed

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// passesUnit counts passes.
var passesUnit = machine.Unit{Name: "passes", One: "pass", Factor: 1, Places: 1, Count: true}

var _ = shared.Register(problem.Task{
	Name: "number-of-passes", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    shared.Inputs(totalOrThread, shared.LengthInput("first", "i1", 0.001, 0.1)),
	Tolerance: answer.Tolerance{Other: 0.1},
	Sources:   []string{"geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		tellTotal(d, &v)
		first := calc.Inches(d.Steps(0.006, 0.018, 0.0005))
		if d.System == machine.Metric {
			first = calc.Millimetres(d.Steps(0.16, 0.45, 0.01))
		}
		v.SetLength("first", first)
		n := passRatio(v) * passRatio(v)
		if part := n - math.Floor(n); n < 5 || n > 30 || part < 0.25 || part > 0.75 { // near a whole number it hides how it was rounded
			return problem.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		total := totalStep(w, v)
		ratio := w.Number("q", "T / i1", machine.Unit{Factor: 1, Places: 2})(total.Over(v.Length("first")), nil)
		w.Number("q2", "q x q", machine.CountUnit)(ratio*ratio, nil)
		n, err := calc.PassesForFirstCut(total, v.Length("first"))
		w.Number("K", "", passesUnit)(float64(n), err)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "linear", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(math.Ceil(passRatio(v))) }},
		{Name: "double", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(math.Ceil(2 * passRatio(v))) }},
		{Name: "round-down", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(math.Floor(passRatio(v) * passRatio(v)))
		}},
		{Name: "not-whole", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(passRatio(v) * passRatio(v)) }},
	},
})

// passRatio is how many times the first pass goes into the total.
func passRatio(v problem.Values) float64 { return totalOf(v).Over(v.Length("first")) }
