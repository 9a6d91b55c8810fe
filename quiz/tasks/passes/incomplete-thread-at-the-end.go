package passes

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "incomplete-thread-at-the-end", Stage: problem.Passes, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: shared.Inputs(problem.ThreadInputs,
		problem.Input{Name: "turns", Symbol: "k", Type: problem.InputPlain, Low: 0.1, High: 20},
		shared.LengthInput("clear", "o", 0, 12)),
	Scrap:     answer.ScrapLow,
	Tolerance: answer.Tolerance{Inch: 0.002, MM: 0.05, Safe: answer.Above, Reach: 0.1},
	Sources:   []string{"arithmetic", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, shared.FirstThread(d), calc.Outside)
		v.Set("turns", d.Steps(0.75, 2.5, 0.25))
		v.SetLength("clear", d.Length(20, 100, 50, 250))
		room, err := calc.DrawOutRoom.Of(v.Length("clear"), v.Pitch(), v.X("turns"))
		if err != nil || v.X("turns") == 1 || shared.Halfway(room.Inches(), d.System.Length()) {
			return problem.Values{} // one turn takes the number out of the work
		}
		if !d.JobWith(&v, calc.Outside, room.Times(3)) {
			return problem.Values{} // there must be a thread before it
		}
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OneStart(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		problem.Step3(w, "x", calc.DrawOutRoom, v.Length("clear"), w.Pitch(), v.X("turns"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-clear", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(v.Pitch().Times(v.X("turns")))
		}},
		{Name: "clear-off", Work: func(v problem.Values) answer.Response {
			left := v.Pitch().Times(v.X("turns")) - v.Length("clear")
			if left <= 0 {
				return answer.NoResponse
			}
			return answer.LengthResponse(left)
		}},
		{Name: "one-turn", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Length("clear") + v.Pitch()) }},
		{Name: "divided", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(v.Length("clear") + v.Pitch().Times(1/v.X("turns")))
		}},
		{Name: "only-clear", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Length("clear")) }},
	},
})
