package infeed

import (
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "infeed-left", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    []problem.Input{shared.LengthInput("total", "T", 0.01, 0.5), cutsInput},
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		cuts := drawCuts(d, 2+int(d.Level), d.Level != problem.NumbersGiven)
		v.SetCuts("cuts", cuts)
		v.SetLength("total", sumOf(cuts)+d.Length(8, 40, 20, 100))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		done := fedStep(w, v, "S")
		w.Length("L", "T - S")(v.Length("total")-done, nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "last-only", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(v.X("total") - lastCut(v)) }},
		{Name: "as-totals", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(v.X("total") - slices.Max(v.Feeds("cuts")))
		}},
		{Name: "sum-only", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(sumOf(v.Feeds("cuts"))) }},
	},
})
