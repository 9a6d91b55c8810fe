package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "starts-by-compound", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: shared.Inputs([]problem.Input{problem.ThreadInputs[0], problem.ThreadInputs[1]},
		turnInput, shared.LengthInput("start", "r0", 0, 0.5),
		problem.Input{Name: "starts", Symbol: "z", Type: problem.InputCount, Low: 2, High: 8},
		problem.Input{Name: "which", Symbol: "q", Type: problem.InputCount, Low: 2, High: 8}),
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources:   []string{"tm-1-420", "dial-marking"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		if d.System == machine.Metric {
			v.SetLength("pitch", t.Pitch)
		} else {
			v.Set("tpi", t.TPI.Number())
		}
		starts := problem.Pick(d, 2, 3, 3, 4)
		v.Set("starts", float64(starts))
		v.Set("which", float64(d.Between(2, starts)))
		turn := turnOf(d)
		v.SetLength("turn", turn)
		v.SetLength("start", steps(d, turn, 0, 0.9))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if v.Count("which") > v.Count("starts") {
			return problem.Working{}, &calc.InputError{What: "which", Got: v.Word("which"), Want: "one of the starts"}
		}
		w := v.Working()
		w.Pitch()
		start, turn := v.Length("start"), v.Length("turn")
		moved := movedAlong(v)
		w.Length("m", "(q - 1) x P")(moved, nil)
		reading, turns, err := calc.ReadingPastZero.Of(start, moved, turn)
		w.Length("t", "r0 + m")(start+moved, err)
		w.Number("k", "", machine.CountUnit)(float64(turns), err)
		w.Length("r", calc.ReadingPastZero.Text)(reading, err)
		return w.DialReading(turn)
	},
	Errors: []problem.CommonError{
		{Name: "by-the-lead", Work: func(v problem.Values) answer.Response {
			return readingAfter(v, movedAlong(v).Times(v.X("starts")))
		}},
		{Name: "one-too-many", Work: func(v problem.Values) answer.Response { return readingAfter(v, movedAlong(v)+v.Pitch()) }},
		{Name: "one-pitch", Work: func(v problem.Values) answer.Response {
			if v.Count("which") == 2 {
				return answer.NoResponse // for the second start it is right
			}
			return readingAfter(v, v.Pitch())
		}},
		{Name: "part-of-pitch", Work: func(v problem.Values) answer.Response {
			return readingAfter(v, movedAlong(v).Times(1/v.X("starts")))
		}},
		{Name: "turn-kept", Work: func(v problem.Values) answer.Response {
			all := v.Length("start") + movedAlong(v)
			if all < v.Length("turn") {
				return answer.NoResponse
			}
			return answer.LengthResponse(all)
		}},
		{Name: "no-start", Work: func(v problem.Values) answer.Response {
			if v.X("start") == 0 {
				return answer.NoResponse
			}
			return answer.LengthResponse(movedAlong(v).Remainder(v.Length("turn")))
		}},
		{Name: "subtract", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse((v.Length("start") - movedAlong(v)).Remainder(v.Length("turn")))
		}},
	},
})

// movedAlong is how far the compound has gone from the first start to the one asked for.
func movedAlong(v problem.Values) calc.Length { return v.Pitch().Times(v.X("which") - 1) }

// readingAfter is what the dial shows after another way.
func readingAfter(v problem.Values, moved calc.Length) answer.Response {
	return answer.LengthResponse((v.Length("start") + moved).Remainder(v.Length("turn")))
}
