package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "even-chip-load", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: shared.Inputs(totalOrThread,
		problem.Input{Name: "pass", Symbol: "p", Type: problem.InputCount, Low: 1, High: 100},
		problem.Input{Name: "passes", Symbol: "Q", Type: problem.InputCount, Low: 2, High: 100}),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Sources:   []string{"geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		passes := d.Between(8, 16)
		tellTotal(d, &v)
		v.Set("passes", float64(passes))
		if loadAfter(v, 1) > calc.Inches(0.0185) { // the first pass would be too heavy
			return problem.Values{}
		}
		v.Set("pass", float64(d.Between(3, passes-1)))
		if tied(d, loadAfter(v, v.Count("pass"))) {
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
		problem.Step3(w, "t", calc.EvenLoad, totalStep(w, v), pass, passes)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "linear", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(totalOf(v).Times(passShare(v))) }},
		{Name: "square", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(totalOf(v).Times(passShare(v) * passShare(v)))
		}},
		{Name: "step", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(loadAfter(v, v.Count("pass")) - loadAfter(v, v.Count("pass")-1))
		}},
	},
})

// loadAfter is the infeed after a pass; none before the first.
func loadAfter(v problem.Values, pass int) calc.Length {
	t, _ := calc.EvenLoad.Of(totalOf(v), pass, v.Count("passes")) // out of its range is only the pass before the first
	return t
}

func passShare(v problem.Values) float64 { return v.X("pass") / v.X("passes") }
