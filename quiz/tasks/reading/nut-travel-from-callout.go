package reading

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "nut-travel-from-callout", Stage: problem.Reading, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "thread", Symbol: "thread", Type: problem.InputThread},
		{Name: "turns", Symbol: "k", Type: problem.InputPlain, Low: 0.25, High: 100},
	},
	Tolerance: answer.Tolerance{Inch: 0.002, MM: 0.05},
	Sources:   []string{"iso-965", "b1-1", "arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		t.Starts = problem.Pick(d, 2, 2, 3, 4)
		if t.Nominal < 0.5 {
			return problem.Values{} // nobody cuts several starts on less
		}
		if t.Class, t.Series = "2A", calc.UNS; t.Metric { // no series has several starts
			t.Class, t.Series = "6g", ""
		}
		v.SetThread("thread", t)
		v.Set("turns", d.Steps(1.5, 9.5, 0.5))
		if t.Lead().Times(v.X("turns")) > calc.Millimetres(mostNutTravel) {
			return problem.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		t := v.Thread("thread")
		lead := t.Lead()
		if t.Metric { // it stands in the callout, behind Ph
			w.Length("l", "")(lead, nil)
		} else {
			pitch := w.Pitch()
			w.Number("z", "", machine.CountUnit)(float64(t.Starts), nil)
			lead = problem.Step2(w, "l", calc.LeadOfStarts, pitch, t.Starts)
		}
		problem.Step2(w, "s", calc.NutTravel, lead, v.X("turns"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "pitch", Work: nutTravel(func(t calc.Designation, turns float64) calc.Length { return t.Pitch.Times(turns) })},
		{Name: "starts-again", Work: nutTravel(func(t calc.Designation, turns float64) calc.Length {
			return t.Lead().Times(turns * float64(t.Starts))
		})},
		{Name: "divided", Work: nutTravel(func(t calc.Designation, turns float64) calc.Length {
			return t.Pitch.Times(turns / float64(t.Starts))
		})},
		{Name: "one-turn", Work: nutTravel(func(t calc.Designation, _ float64) calc.Length { return t.Lead() })},
		{Name: "sum", Work: nutTravel(func(t calc.Designation, turns float64) calc.Length {
			return (t.Lead() + t.Pitch).Times(turns)
		})},
	},
})

// nutTravel is the error of taking another length a turn. With one start there is no other.
func nutTravel(of func(t calc.Designation, turns float64) calc.Length) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		t := v.Thread("thread")
		if t.Starts == 1 {
			return answer.NoResponse
		}
		return answer.LengthResponse(of(t, v.X("turns")))
	}
}

// mostNutTravel is as far as anyone turns a nut by hand to see, in mm.
const mostNutTravel = 100
