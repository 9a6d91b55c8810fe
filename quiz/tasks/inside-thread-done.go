package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "inside-thread-done", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "gauges", Symbol: "gauges", Type: problem.InputWord, Words: []string{"not-yet", "go-only", "neither", "both"}}},
	Sources: []string{"common-practice", "b1-2"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("gauges", problem.Pick(d, "not-yet", "not-yet", "go-only", "neither", "both"))
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{
			"not-yet": "stop-short-and-try", "go-only": "done", "neither": "a-little-more", "both": "reject",
		}[v.Word("gauges")])
	},
	Errors: []problem.CommonError{
		{Name: "depth-only"},
		{Name: "wires"},
		{Name: "not-go-enters"},
		{Name: "stop-short-and-try", Work: optionUnlessIn("gauges", "stop-short-and-try", "not-yet", "neither")},
		{Name: "done", Work: optionUnlessIn("gauges", "done", "go-only")},
		{Name: "a-little-more", Work: optionUnlessIn("gauges", "a-little-more", "neither", "not-yet")},
		{Name: "reject", Work: optionUnlessIn("gauges", "reject", "both")},
	},
})

// optionUnlessIn is a wrong option, except in the situations where it is right or
// near enough to right that offering it would be unfair.
func optionUnlessIn(input, option string, right ...string) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		for _, r := range right {
			if v.Word(input) == r {
				return answer.NoResponse
			}
		}
		return answer.OptionsResponse(option)
	}
}
