package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "time-to-shoulder", Stage: problem.SetUp, Kind: answer.Quantity, SafetyCritical: true,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.RpmInput, shared.LengthInput("gap", "g", 0.01, 10)),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Other: 0.03},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, shared.FirstThread(d), calc.Outside)
		rpm := shared.DrawSpeed(d)
		v.Set("rpm", float64(rpm))
		v.SetLength("gap", drawGap(d))
		if t := timeLeft(v); t < 0.8 || t > 5 || shared.Halfway(t, secondUnit) || shared.TooFast(v.Pitch(), rpm) {
			return problem.Values{}
		}
		if !shared.JobAt(d, &v, rpm, v.Length("gap").Times(gapOnWork)) {
			return problem.Values{}
		}
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OneStart(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		pitch := w.Pitch()
		problem.StepIn2(w, "j", aSecond(v.System), calc.CarriageSpeedOneStart, shared.SpeedOf(v), pitch)
		problem.StepIn3(w, "y", secondUnit, calc.TimeForGap, v.Length("gap"), shared.SpeedOf(v), pitch)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		// One size of number, two causes: where the threads are coarse this and tpi
		// can't be told apart.
		{Name: "no-60", SameResultAs: "no-60", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(timeLeft(v) / 60) }},
		{Name: "tpi", Work: func(v problem.Values) answer.Response {
			return apartFrom(timeLeft(v)/60, v.Length("gap").Over(shared.UpsideDown(v).Times(v.X("rpm")/60)), 0.025)
		}},
		{Name: "gap-only", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(v.Length("gap").Over(v.Pitch()))
		}},
		{Name: "speed-over-gap", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(1 / timeLeft(v)) }},
	},
})

var secondUnit = machine.Unit{Name: "s", Factor: 1, Places: 2}

// timeLeft is the time for the gap, and 0 where there is none.
func timeLeft(v problem.Values) float64 {
	t, _ := calc.TimeForGap.Of(v.Length("gap"), shared.SpeedOf(v), v.Pitch()) // Work reports the error
	return t
}
