package tasks_test

import "maps"

// The second computations of what belongs to the tool.
func init() {
	maps.Copy(second, map[string]func(g given) number{
		// The sharp point goes 7/8 H from a nominal blank, 6/8 H from the basic bore; the tip of
		// a circle between flanks at 60 degrees lies r / sin 30 - r above it.
		"depth-for-nose-radius": func(g given) number {
			eighths := 7.0
			if g.words["side"] == "inside" {
				eighths = 6
			}
			r := g.x("nose-radius")
			sin30, _ := sincos(n(30))
			return g.eighths(eighths).minus(r.over(sin30).minus(r))
		},
		// The circle leaves the flanks r cos 30 / tan 30 above the sharp point.
		"finest-pitch-for-nose": func(g given) number {
			eighths := n(2)
			if g.words["side"] == "inside" {
				eighths = n(1)
			}
			height := g.x("nose-radius").times(cosOf(n(30))).over(tanOf(n(30))).times(n(8)).over(eighths)
			return height.over(cosOf(n(30)))
		},
	})
}
