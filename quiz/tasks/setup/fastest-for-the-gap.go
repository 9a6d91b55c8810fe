package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "fastest-for-the-gap", Stage: problem.SetUp, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: shared.Inputs(problem.ThreadInputs, shared.LengthInput("gap", "g", 0.01, 10),
		problem.Input{Name: "seconds", Symbol: "y", Type: problem.InputPlain, Low: 0.1, High: 60}),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Other: 1, Safe: answer.Below, Reach: 0.1},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, shared.FirstThread(d), calc.Outside)
		v.SetLength("gap", drawGap(d))
		v.Set("seconds", problem.Pick(d, 1.5, 2, 2.5, 3))
		if rpm := fastest(v); rpm < 25 || rpm > 250 || !d.JobWith(&v, calc.Outside, v.Length("gap").Times(gapOnWork)) {
			return problem.Values{}
		}
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OneStart(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		problem.Step3(w, "v", calc.FastestSpeed, v.Length("gap"), w.Pitch(), v.X("seconds"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		// One size of number, two causes, as in time-to-shoulder.
		{Name: "no-60", SameResultAs: "no-60", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(fastest(v) / 60) }},
		{Name: "mult-t", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(fastest(v) * v.X("seconds") * v.X("seconds"))
		}},
		{Name: "div-n", Work: func(v problem.Values) answer.Response {
			return apartFrom(fastest(v)/60, 60*v.Length("gap").Over(shared.UpsideDown(v))/v.X("seconds"), 1.6)
		}},
		{Name: "no-time", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(fastest(v) * v.X("seconds")) }},
	},
})

// fastest is the key, and 0 where there is none.
func fastest(v problem.Values) float64 {
	speed, _ := calc.FastestSpeed.Of(v.Length("gap"), v.Pitch(), v.X("seconds")) // Work reports the error
	return speed.RPM()
}
