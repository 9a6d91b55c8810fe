package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "carriage-speed", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs: shared.Inputs(problem.ThreadInputs, shared.RpmInput,
		problem.Input{Name: "starts", Symbol: "z", Type: problem.InputCount, Low: 1, High: 12}),
	Tolerance: answer.Tolerance{Relative: 0.02},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		t.Starts = problem.Pick(d, 1, 2, 2, 3)
		shared.TellStarts(d, &v, t)
		rpm := shared.DrawSpeed(d)
		v.Set("rpm", float64(rpm))
		speed, err := calc.CarriageSpeed.Of(shared.SpeedOf(v), leadOf(v))
		if err != nil || shared.Halfway(speed.Inches(), aSecond(d.System)) || shared.TooFast(leadOf(v), rpm) {
			return problem.Values{}
		}
		shared.JobAt(d, &v, rpm, 0)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.SameStarts(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		lead := problem.Step2(w, "l", calc.LeadOfStarts, w.Pitch(), v.Count("starts"))
		problem.StepIn2(w, "j", aSecond(v.System), calc.CarriageSpeed, shared.SpeedOf(v), lead)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-60", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(leadOf(v).Times(v.X("rpm"))) }},
		{Name: "pitch", Work: func(v problem.Values) answer.Response {
			if v.Count("starts") == 1 {
				return answer.NoResponse
			}
			return shared.Worked(calc.CarriageSpeed.Of(shared.SpeedOf(v), v.Pitch()))
		}},
		{Name: "tpi-mult", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.UpsideDown(v).Times(v.X("rpm") / 60))
		}},
		{Name: "invert", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(leadOf(v).Times(60 / v.X("rpm")))
		}},
	},
})

func leadOf(v problem.Values) calc.Length {
	lead, _ := calc.LeadOfStarts.Of(v.Pitch(), v.Count("starts")) // Work reports the error
	return lead
}
