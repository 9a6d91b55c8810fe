package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "room-to-start", Stage: problem.Passes, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: shared.Inputs(problem.ThreadInputs, shared.RpmInput,
		problem.Input{Name: "seconds", Symbol: "y", Type: problem.InputPlain, Low: 0.1, High: 60}),
	Scrap:     answer.ScrapLow,
	Tolerance: answer.Tolerance{Inch: 0.005, MM: 0.12, Safe: answer.Above, Reach: 0.1},
	Sources:   []string{"arithmetic", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, shared.FirstThread(d), calc.Outside)
		rpm := shared.DrawSpeed(d)
		v.Set("rpm", float64(rpm))
		v.Set("seconds", problem.Pick(d, 1.5, 2, 2.5, 3))
		room, err := calc.RoomToStop.Of(shared.SpeedOf(v), v.Pitch(), v.X("seconds"))
		if err != nil || shared.Halfway(room.Inches(), d.System.Length()) || shared.TooFast(v.Pitch(), rpm) {
			return problem.Values{}
		}
		shared.JobAt(d, &v, rpm, 0)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OneStart(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		problem.Step3(w, "x", calc.RoomToStop, shared.SpeedOf(v), w.Pitch(), v.X("seconds"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-60", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(v.Pitch().Times(v.X("rpm") * v.X("seconds")))
		}},
		{Name: "one-pitch", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Pitch()) }},
		{Name: "tpi", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.UpsideDown(v).Times(v.X("rpm") / 60 * v.X("seconds")))
		}},
		{Name: "no-time", Work: func(v problem.Values) answer.Response {
			return shared.Worked(calc.CarriageSpeedOneStart.Of(shared.SpeedOf(v), v.Pitch()))
		}},
	},
})
