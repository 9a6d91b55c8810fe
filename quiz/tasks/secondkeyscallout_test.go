package tasks_test

import (
	"maps"
	"strings"
)

// The tasks on callouts, on the ends of a thread, on other forms and on read-outs.
func init() {
	maps.Copy(second, map[string]func(g given) number{
		"nut-travel-from-callout": func(g given) number {
			_, p := g.thread()
			return p.times(g.starts()).times(g.x("turns"))
		},
		"incomplete-thread-at-the-end": func(g given) number { return g.pitch().times(g.x("turns")).plus(g.x("clear")) },
		"whitworth-depth": func(g given) number {
			// two thirds of the height of a triangle of 55 degrees on one pitch
			return g.pitch().over(n(2)).over(tanOf(dec("27.5"))).times(n(2)).over(n(3))
		},
		"read-out-at-full-depth": func(g given) number {
			change := g.x("depth")
			if g.words["reads"] == "diameter" {
				change = change.plus(change)
			}
			if g.words["side"] == "inside" {
				return g.x("set").plus(change)
			}
			return g.x("set").minus(change)
		},
		"pitch-diameter-before-plating": func(g given) number {
			// a layer on a flank of 30 degrees moves the pitch line by t / sin 30, on two sides
			growth := g.x("plating").over(dec("0.5")).times(n(2))
			inside := g.words["side"] == "inside"
			if name, called := g.words["thread"]; called {
				inside = strings.ContainsAny(name[strings.LastIndex(name, "-"):], "BHG")
			}
			if inside {
				return g.x("after").plus(growth)
			}
			return g.x("after").minus(growth)
		},
	})
}
