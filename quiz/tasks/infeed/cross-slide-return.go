package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "cross-slide-return", Stage: problem.Infeed, Kind: answer.Readings,
	Inputs:    []problem.Input{cutsInput, shared.LengthInput("next", "e", 0.0005, 0.01)},
	Tolerance: answer.Tolerance{Inch: 0.0002, MM: 0.006},
	Sources:   []string{"dial-marking"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		var feeds []float64
		for range 2 + int(d.Level) {
			feeds = append(feeds, finishingCut(d))
			if d.IntN(2) == 0 {
				feeds = append(feeds, 0)
			}
		}
		v.SetCuts("cuts", feeds)
		v.Set("next", finishingCut(d))
		d.Job(&v, calc.Outside)
		if springs(feeds) == 0 {
			return problem.Values{}
		}
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		back := fedStep(w, v, "r1")
		w.Length("r2", "r1 + e")(back+v.Length("next"), nil)
		return w.Row("r1", "r2")
	},
	Errors: []problem.CommonError{
		{Name: "back-to-zero", Work: func(v problem.Values) answer.Response { return returns(v, 0) }},
		{Name: "last-only", Work: func(v problem.Values) answer.Response { return returns(v, calc.Inches(lastCut(v))) }},
		{Name: "counts-springs", Work: func(v problem.Values) answer.Response {
			return returns(v, sumOf(v.Feeds("cuts"))+v.Length("next").Times(springs(v.Feeds("cuts"))))
		}},
	},
})

// finishingCut draws a light cut straight in: half a thousandth to two and a half, or
// 0.02 to 0.06 mm.
func finishingCut(d *problem.Draw) float64 {
	if d.System == machine.Metric {
		return calc.Millimetres(d.Steps(0.02, 0.06, 0.01)).Inches()
	}
	return d.Steps(0.0005, 0.0025, 0.0005)
}

// returns is the pair of readings for a belief about where the slide stands.
func returns(v problem.Values, at calc.Length) answer.Response {
	return answer.NumbersResponse(at.Inches(), (at + v.Length("next")).Inches())
}

func springs(feeds []float64) float64 {
	n := 0.0
	for _, f := range feeds {
		if f == 0 {
			n++
		}
	}
	return n
}
