package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "inside-thread-done", Stage: quiz.Fitting,
	Inputs:  []quiz.Input{{Name: "gauges", Symbol: "gauges", Is: quiz.AWord, Words: []string{"not-yet", "go-only", "neither", "both"}}},
	Sources: []string{"common-practice", "b1-2"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("gauges", quiz.Pick(d, "not-yet", "not-yet", "go-only", "neither", "both"))
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{
			"not-yet": "stop-short-and-try", "go-only": "done", "neither": "a-little-more", "both": "reject",
		}[v.Word("gauges")])
	},
	Slips: []quiz.Slip{
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
func optionUnlessIn(input, option string, right ...string) func(quiz.Values) quiz.Reply {
	return func(v quiz.Values) quiz.Reply {
		for _, r := range right {
			if v.Word(input) == r {
				return quiz.NoAnswer
			}
		}
		return quiz.Keys(option)
	}
}
