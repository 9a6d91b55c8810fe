package infeed

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "what-a-spring-pass-leaves", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: []problem.Input{
		shared.LengthInput("cut", "e", 0.001, 0.1),
		{Name: "stays", Symbol: "r", Type: problem.InputPlain, Low: 0, High: 95, Group: "share"},
		{Name: "left-on", Symbol: "e1", Type: problem.InputLength, Low: 0, High: 0.1, Group: "share"},
		{Name: "springs", Symbol: "s", Type: problem.InputCount, Low: 1, High: 6},
	},
	Tolerance: answer.Tolerance{Inch: 0.00008, MM: 0.002},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		cut := d.Length(6, 15, 15, 38)
		share := 5 * d.Between(4, 10)
		v.SetLength("cut", cut)
		if d.Level == problem.NumbersGiven {
			v.Set("stays", float64(share))
		} else {
			v.SetLength("left-on", shared.AsPrinted(d, cut.Times(float64(share)/100)))
		}
		v.Set("springs", float64(d.Between(1, 3)))
		if cut.Times(math.Pow(lagOf(v), 1+v.X("springs"))) < calc.Inches(0.0004) {
			return problem.Values{} // less than anyone could measure
		}
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		if v.Has("left-on") {
			if v.Length("left-on") >= v.Length("cut") {
				return problem.Working{}, &calc.InputError{What: "left on", Got: calc.LengthText(v.Length("left-on")), Want: "less than the cut itself"}
			}
			w.Number("q", "e1 / e", machine.PlainUnit)(lagOf(v), nil)
		} else {
			w.Number("q", "r / 100", machine.PlainUnit)(lagOf(v), nil)
		}
		springs := v.Count("springs")
		problem.Step2(w, "g", calc.LeftAfter(springs), v.Length("cut"), lagOf(v))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "one-spring", Work: func(v problem.Values) answer.Response {
			if v.Count("springs") < 2 {
				return answer.NoResponse // there was one
			}
			return leftAfter(v, lagOf(v), 2)
		}},
		{Name: "own-pass", Work: func(v problem.Values) answer.Response {
			if v.Count("springs") == 2 {
				return answer.NoResponse // the number of one-spring
			}
			return leftAfter(v, lagOf(v), v.Count("springs"))
		}},
		{Name: "none", Work: func(problem.Values) answer.Response { return answer.NumberResponse(0) }},
		{Name: "linear", Work: func(v problem.Values) answer.Response {
			left := 1 - lagOf(v)*float64(1+v.Count("springs"))
			if left <= 0 {
				return answer.NoResponse
			}
			return answer.LengthResponse(v.Length("cut").Times(left))
		}},
		{Name: "swapped", Work: func(v problem.Values) answer.Response { return leftAfter(v, 1-lagOf(v), 1+v.Count("springs")) }},
	},
})

// lagOf is the share of what a pass is asked to take that stays on.
func lagOf(v problem.Values) float64 {
	if v.Has("left-on") {
		return v.Length("left-on").Over(v.Length("cut"))
	}
	return v.X("stays") / 100
}

// leftAfter is what a number of passes leaves by a belief about the share.
func leftAfter(v problem.Values, share float64, passes int) answer.Response {
	return shared.Worked(calc.LeftAfter(passes-1).Of(v.Length("cut"), share)) // the first pass is the cut's own
}
