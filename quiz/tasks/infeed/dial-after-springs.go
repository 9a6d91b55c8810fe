package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "dial-after-springs", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    []problem.Input{turnInput, shared.LengthInput("start", "r0", 0, 0.5), cutsInput},
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.01},
	Sources:   []string{"dial-marking"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		turn := turnOf(d)
		cuts := drawCuts(d, 3+int(d.Level), true)
		v.SetLength("turn", turn)
		v.SetCuts("cuts", cuts)
		if d.Level == problem.NumbersGiven {
			v.SetLength("start", steps(d, turn, 0.05, 0.3))
		} else {
			v.SetLength("start", steps(d, turn, 0.3, 0.95))
		}
		d.Job(&v, calc.Outside)
		if sumOf(cuts) == withSprings(v) { // no spring pass among them
			return problem.Values{}
		}
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		start, turn := v.Length("start"), v.Length("turn")
		done := fedStep(w, v, "S")
		reading, turns, err := calc.ReadingPastZero.Of(start, done, turn)
		w.Length("t", "r0 + S")(start+done, err)
		if turns > 0 {
			w.Number("k", "", machine.CountUnit)(float64(turns), err)
			w.Length("r", calc.ReadingPastZero.Text)(reading, err)
		}
		return w.DialReading(turn)
	},
	Errors: []problem.CommonError{
		{Name: "counts-springs", Work: func(v problem.Values) answer.Response { return reads(v, v.Length("start")+withSprings(v)) }},
		{Name: "no-start", Work: func(v problem.Values) answer.Response { return reads(v, sumOf(v.Feeds("cuts"))) }},
		{Name: "last-only", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(lastCut(v)) }},
	},
})

// reads is what the dial shows for a total.
func reads(v problem.Values, total calc.Length) answer.Response {
	return answer.LengthResponse(total.Remainder(v.Length("turn")))
}
