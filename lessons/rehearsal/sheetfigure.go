package rehearsal

import (
	"scratchpass/calc"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/drawing"
)

// profile is the figure of the thread and its tool on a card.
func profile(j bench.Job) string {
	return map[bench.Form]string{bench.Vee: "thread-profile", bench.Acme: "acme-form", bench.Pipe: "pipe-thread-height"}[j.Form()]
}

// cardFacts are what the pictures of a card are drawn from.
func cardFacts(p bench.Plan) drawing.Facts {
	j := p.Job
	f := drawing.Facts{Metric: j.Lathe.Metric, Example: true, Words: map[string]string{"side": j.Side.String()}, Lengths: map[string]calc.Length{
		"nominal": j.Start, "pitch": j.Thread.Pitch, "below": belowRoot, "depth": p.Depth, "groove": j.Gap, "bore": j.Start}}
	if j.Side == calc.Inside {
		f.Lengths["nominal"] = j.Start + p.Depth.Times(2) // what a chamfer goes out to
	}
	if j.Meets() != bench.Shoulder && j.Meets() != bench.Bottom {
		f.Words["groove"] = "none"
	}
	f.Lengths["card-depth"], f.Lengths["card-flat"], f.Lengths["card-pitch"] = p.Depth, j.Tip.Flat, j.Thread.Pitch
	if j.Tip.Nose > 0 {
		f.Lengths["nose-radius"] = j.Tip.Nose
	} else {
		f.Lengths["tool-flat"] = j.Tip.Flat
	}
	return f
}
