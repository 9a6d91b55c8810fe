package tasks

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "even-chip-load", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: inputs(totalOrThread,
		problem.Input{Name: "pass", Symbol: "p", Type: problem.InputCount, Low: 1, High: 100},
		problem.Input{Name: "passes", Symbol: "Q", Type: problem.InputCount, Low: 2, High: 100}),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		passes := d.Between(8, 16)
		tellTotal(d, &v)
		if totalOf(v).Times(1/math.Sqrt(float64(passes))) > calc.Inches(0.0185) { // the first pass would be too heavy
			return problem.Values{}
		}
		v.Set("passes", float64(passes))
		v.Set("pass", float64(d.Between(3, passes-1)))
		if tied(d, totalOf(v).Times(math.Sqrt(passShare(v)))) {
			return problem.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		pass, passes := v.Count("pass"), v.Count("passes")
		if pass < 1 || pass > passes {
			return problem.Working{}, &calc.InputError{What: "pass", Got: calc.Shortest(v.X("pass"), 2), Want: "1 to " + calc.Shortest(v.X("passes"), 0)}
		}
		totals, err := calc.EqualArea(totalStep(w, v), passes)
		if err != nil {
			return problem.Working{}, err
		}
		w.Length("t", "T x sqrt(p / Q)")(totals[pass-1], nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "linear", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(totalOf(v).Times(passShare(v))) }},
		{Name: "square", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(totalOf(v).Times(passShare(v) * passShare(v)))
		}},
		{Name: "step", Work: func(v problem.Values) answer.Response {
			before := math.Sqrt((v.X("pass") - 1) / v.X("passes"))
			return answer.LengthResponse(totalOf(v).Times(math.Sqrt(passShare(v)) - before))
		}},
	},
})

// totalOrThread is the total infeed, or the thread that it is estimated from.
var totalOrThread = inputs(problem.ThreadInputs, problem.Input{Name: "total", Symbol: "T", Type: problem.InputLength, Low: 0.01, High: 0.5, Group: "thread"})

// tellTotal gives the total infeed, or above the first level a thread.
func tellTotal(d *problem.Draw, v *problem.Values) {
	if d.Level == problem.NumbersGiven {
		v.SetLength("total", d.Length(36, 64, 90, 165))
		return
	}
	d.Tell(v, d.Thread(calc.Inch/18, calc.Inch/9), calc.Outside)
}

// totalStep adds the step to the estimated total where a thread is given.
func totalStep(w *problem.Working, v problem.Values) calc.Length {
	if v.Has("total") {
		return v.Length("total")
	}
	return w.Length("T", "P / 1.5")(calc.RuleOfThumbTravel(w.Pitch()))
}

// totalOf is totalStep for a slip.
func totalOf(v problem.Values) calc.Length {
	if v.Has("total") {
		return v.Length("total")
	}
	return v.Pitch().Times(1 / 1.5)
}

// tied reports whether a length lies just half-way between two printed ones: after
// a step that was rounded, a calculator may then print the other.
func tied(d *problem.Draw, l calc.Length) bool {
	u := d.System.Length()
	x := l.Inches() * u.Factor * math.Pow10(u.Places)
	return calc.Within(x-math.Floor(x), 0.5, 0.001)
}

func passShare(v problem.Values) float64 { return v.X("pass") / v.X("passes") }
