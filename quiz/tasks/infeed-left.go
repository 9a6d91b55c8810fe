package tasks

import (
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "infeed-left", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    []problem.Input{length("total", "T", 0.01, 0.5), cutsInput},
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		cuts := drawCuts(d, 2+int(d.Level), d.Level != problem.NumbersGiven)
		v.SetCuts("cuts", cuts)
		v.SetLength("total", sum(cuts)+d.Length(8, 40, 20, 100))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		done := w.Length("S", "cuts")(calc.SumOfCuts(v.Cuts("cuts")), nil)
		w.Length("L", "T - S")(v.Length("total")-done, nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "last-only", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(v.X("total") - lastCut(v)) }},
		{Name: "as-totals", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(v.X("total") - slices.Max(v.Feeds("cuts")))
		}},
		{Name: "sum-only", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(sum(v.Feeds("cuts"))) }},
	},
})

// cutsInput is a list of passes: feeds, and 0 for a spring pass.
var cutsInput = problem.Input{Name: "cuts", Symbol: "cuts", Type: problem.InputCuts, Low: 0, High: 0.1}

// drawCuts draws passes that get lighter, as they should, with spring passes among
// them or without.
func drawCuts(d *problem.Draw, n int, springs bool) []float64 {
	var feeds []float64
	feed := d.Length(7, 15, 20, 36)
	for i := range n {
		feeds = append(feeds, feed.Inches())
		if springs && i > 0 && d.IntN(2) == 0 {
			feeds = append(feeds, 0)
		}
		feed = max(feed-d.Length(0, 3, 0, 8), d.Length(2, 2, 6, 6))
	}
	return feeds
}

// sum adds up feeds.
func sum(feeds []float64) calc.Length {
	var all calc.Length
	for _, f := range feeds {
		all = all.Plus(calc.Inches(f))
	}
	return all
}

// lastCut is the last feed that was not a spring pass, in held units.
func lastCut(v problem.Values) float64 {
	last := 0.0
	for _, f := range v.Feeds("cuts") {
		if f != 0 {
			last = f
		}
	}
	return last
}

// withSprings adds the cut before it again for every spring pass.
func withSprings(v problem.Values) calc.Length {
	var all calc.Length
	last := 0.0
	for _, f := range v.Feeds("cuts") {
		if f != 0 {
			last = f
		}
		all = all.Plus(calc.Inches(last))
	}
	return all
}
