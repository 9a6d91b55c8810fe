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
		// The slow ends of the table as they are printed, and a quarter of the turns.
		"speed-from-the-table": func(g given) number {
			slow := map[string]number{"mild-steel": n(80), "stainless": n(40), "cast-iron": n(50), "brass": n(150), "aluminium": n(150)}
			inches := n(12)
			if g.metric {
				slow = map[string]number{"mild-steel": n(24), "stainless": n(12), "cast-iron": n(15), "brass": n(46), "aluminium": n(46)}
				inches = n(1000)
			}
			return slow[g.words["material"]].times(inches).over(pi.times(g.diameter())).over(n(4))
		},
		"which-spindle-speed": func(g given) number {
			limit := g.x("by-stopping")
			if cut := g.cuttingLimit(); cut.less(limit) {
				limit = cut
			}
			set := n(0)
			for _, name := range []string{"speed-1", "speed-2", "speed-3", "speed-4", "speed-5", "speed-6"} {
				if s := g.x(name); !limit.less(s) {
					set = s
				}
			}
			return set
		},
		"feed-from-thread-micrometer": func(g given) number {
			size := g.x("reading")
			if g.has("reads-high") {
				size = size.minus(g.x("reads-high"))
			}
			feed := size.plus(size).minus(g.x("largest")).minus(g.x("least")).over(n(4))
			if g.has("angle") {
				feed = feed.over(cosOf(g.x("angle")))
			}
			return feed
		},
	})
}

// cuttingLimit is the speed that the cutting speed allows, given or a quarter of turning.
func (g given) cuttingLimit() number {
	if g.has("turning") {
		return g.x("turning").over(n(4))
	}
	return g.x("by-cutting")
}
