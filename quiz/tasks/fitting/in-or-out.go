package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "in-or-out", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs: []problem.Input{
		shared.LengthInput("measured", "E", 0.05, 6),
		shared.LengthInput("high", "E2", 0.05, 6),
		{Name: "low", Symbol: "E1", Type: problem.InputLength, Low: 0.05, High: 6, Group: "low-limit"},
		{Name: "tolerance", Symbol: "u", Type: problem.InputLength, Low: 0.0005, High: 0.1, Group: "low-limit"},
	},
	Tolerance: answer.Tolerance{Inch: 0.00015, MM: 0.004},
	Sources:   []string{"b1-1", "iso-965", "arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		limits, err := calc.LimitsOf(withClass(v, shared.FirstThread(d)))
		if err != nil {
			return problem.Values{}
		}
		high, low := shared.AsPrinted(d, limits.Pitch.Max), shared.AsPrinted(d, limits.Pitch.Min)
		v.SetLength("high", high)
		if d.Level == problem.NumbersGiven {
			v.SetLength("low", low)
		} else {
			v.SetLength("tolerance", shared.AsPrinted(d, high-low))
		}
		from := problem.Pick(d, -0.5, -0.3, 0.2, 0.35, 0.65, 0.8, 1.3, 1.5) // of the way from low to high
		near := calc.Inches(d.Steps(-0.0004, 0.0004, 0.0001))
		v.SetLength("measured", shared.AsPrinted(d, low+(high-low).Times(from)+near))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		low, high, measured := lowLimit(v), v.Length("high"), v.Length("measured")
		if low >= high {
			return problem.Working{}, &calc.InputError{What: "low limit", Got: calc.LengthText(low), Want: "one below the high limit, " + calc.LengthText(high)}
		}
		if v.Has("tolerance") {
			w.Length("E1", "E2 - u")(low, nil)
		}
		fromLow := w.Length("b1", "E - E1")(measured-low, nil)
		fromHigh := w.Length("b2", "E2 - E")(high-measured, nil)
		nearer := "b1"
		if fromHigh < fromLow {
			nearer = "b2"
		}
		w.Length("m", nearer)(min(fromLow, fromHigh), nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "nominal", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(v.Length("measured") - (lowLimit(v) + v.Length("high")).Times(0.5))
		}},
		{Name: "high-only", Work: func(v problem.Values) answer.Response {
			if roomHigh(v) <= roomLow(v) {
				return answer.NoResponse
			}
			return answer.LengthResponse(roomHigh(v))
		}},
		{Name: "low-only", Work: func(v problem.Values) answer.Response {
			if roomLow(v) <= roomHigh(v) {
				return answer.NoResponse
			}
			return answer.LengthResponse(roomLow(v))
		}},
		{Name: "abs", Work: func(v problem.Values) answer.Response {
			if nearest := min(roomLow(v), roomHigh(v)); nearest < 0 {
				return answer.LengthResponse(-nearest)
			}
			return answer.NoResponse
		}},
		{Name: "sign", Work: func(v problem.Values) answer.Response {
			if nearest := min(roomLow(v), roomHigh(v)); nearest > 0 {
				return answer.LengthResponse(-nearest)
			}
			return answer.NoResponse
		}},
	},
})

// lowLimit is the low limit, given or by the tolerance.
func lowLimit(v problem.Values) calc.Length {
	if v.Has("tolerance") {
		return v.Length("high") - v.Length("tolerance")
	}
	return v.Length("low")
}

func roomLow(v problem.Values) calc.Length  { return v.Length("measured") - lowLimit(v) }
func roomHigh(v problem.Values) calc.Length { return v.Length("high") - v.Length("measured") }
