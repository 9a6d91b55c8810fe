package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "dial-past-a-turn", Stage: problem.Infeed, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: []problem.Input{
		turnInput, shared.LengthInput("start", "r0", 0, 0.5), shared.LengthInput("infeed", "i", 0, 2),
	},
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources:   []string{"dial-marking"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		turn := turnOf(d)
		v.SetLength("turn", turn)
		start := steps(d, turn, 0.05, 0.6)
		most := 1.3
		if d.Level != problem.NumbersGiven {
			most = 2.6
		}
		infeed := steps(d, turn, 0.5, most)
		if start+infeed <= turn || infeed > calc.Inches(0.160) { // the count matters only past the zero; no first thread needs more
			return problem.Values{}
		}
		v.SetLength("start", start)
		v.SetLength("infeed", infeed)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		start, infeed, turn := v.Length("start"), v.Length("infeed"), v.Length("turn")
		reading, turns, err := calc.ReadingPastZero.Of(start, infeed, turn)
		w.Length("t", "r0 + i")(start+infeed, err)
		w.Number("k", "", machine.CountUnit)(float64(turns), err)
		w.Length("r", calc.ReadingPastZero.Text)(reading, err)
		return w.DialReading(turn)
	},
	Errors: []problem.CommonError{
		{Name: "turn-kept", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(v.Length("start").Plus(v.Length("infeed")))
		}},
		{Name: "no-start", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(v.Length("infeed").Remainder(v.Length("turn")))
		}},
		{Name: "cap", Work: func(problem.Values) answer.Response { return answer.NumberResponse(0) }},
		{Name: "subtract", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse((v.Length("start") - v.Length("infeed")).Remainder(v.Length("turn")))
		}},
	},
})
