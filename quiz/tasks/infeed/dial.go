package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// turnInput is one turn of a dial, as lathes have it.
var turnInput = problem.Input{Name: "turn", Symbol: "R", Type: problem.InputLength, Low: machine.LeastTurn.Inches(), High: machine.LargestTurn.Inches()}

// turnOf is one turn of a compound dial: a common one, or the learner's own when
// the problem is as on the job.
func turnOf(d *problem.Draw) calc.Length {
	if d.Level == problem.OnTheJob {
		return d.Lathe.Compound.Turn
	}
	if d.System == machine.Metric {
		return calc.Millimetres(problem.Pick(d, 1.0, 2.0, 2.5, 3.0))
	}
	return calc.Inches(problem.Pick(d, 0.100, 0.100, 0.125, 0.200))
}

// steps draws a length between two shares of a turn, in whole thousandths or in
// steps of 0.02 mm.
func steps(d *problem.Draw, turn calc.Length, low, high float64) calc.Length {
	if d.System == machine.Metric {
		mm := turn.Millimetres()
		return calc.Millimetres(d.Steps(calc.Round(mm*low, 1), calc.Round(mm*high, 1), 0.02))
	}
	return calc.Inches(d.Steps(calc.Round(turn.Inches()*low, 3), calc.Round(turn.Inches()*high, 3), 0.001))
}

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

// fedStep adds the step to what all the cuts have fed the slide.
func fedStep(w *problem.Working, v problem.Values, symbol string) calc.Length {
	return w.Length(symbol, calc.FedByCuts.Text)(calc.FedByCuts.Of(v.Cuts("cuts")), nil)
}

// sumOf adds up feeds.
func sumOf(feeds []float64) calc.Length {
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
