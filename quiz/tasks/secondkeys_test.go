package tasks_test

// second holds the second computations. A numeric task without one is an error.
var second = map[string]func(g given) number{
	"pitch-from-tpi": func(g given) number { return g.pitch() },
	"single-depth":   func(g given) number { return g.h1724() },
	"depth-for-tool": func(g given) number { return g.toolDepth(g.words["side"] == "inside") },
	"compound-travel": func(g given) number {
		return g.h1724().over(cosOf(g.angle()))
	},
	"diameter-dial-plunge": func(g given) number { return g.h1724().times(n(2)) },
	"radius-dial-plunge":   func(g given) number { return g.h1724() },
	"rule-of-thumb": func(g given) number {
		return g.pitch().over(dec("1.5")).minus(g.toolDepth(true).over(cosOf(g.angle())))
	},
	"dial-past-a-turn":   func(g given) number { return g.x("start").plus(g.x("infeed")).mod(g.x("turn")) },
	"dial-after-springs": func(g given) number { return g.x("start").plus(g.sum()).mod(g.x("turn")) },
	"infeed-left":        func(g given) number { return g.x("total").minus(g.sum()) },
	"find-where-you-are": func(g given) number { return g.x("total").minus(g.x("dial")) },
	"finish-with-cross-slide": func(g given) number {
		h := g.x("total").minus(g.x("done")).times(cosOf(g.angle()))
		if g.words["dial-reads"] == "diameter" {
			return h.times(n(2))
		}
		return h
	},
	"even-chip-load": func(g given) number { return g.total().times(g.x("pass").over(g.x("passes")).sqrt()) },
	"number-of-passes": func(g given) number {
		ratio := g.total().over(g.x("first"))
		return ratio.times(ratio).ceil()
	},
	"flank-width": func(g given) number {
		h := number{}
		if g.has("depth") {
			h = g.x("depth")
		} else {
			h = g.h1724()
		}
		return h.times(n(4)).over(root3).plus(g.x("tool-flat"))
	},
	"metric-thread-inch-dial": func(g given) number {
		p := number{}
		if g.has("pitch-mm") {
			p = g.x("pitch-mm").over(dec("25.4"))
		} else {
			_, p = g.thread()
		}
		return root3.over(n(2)).times(n(17)).over(n(24)).times(p).over(cosOf(g.angle()))
	},
	"sideways-shift": func(g given) number { return g.h1724().times(tanOf(g.angle())) },
	"what-a-spring-pass-leaves": func(g given) number {
		share := number{}
		if g.has("left-on") {
			share = g.x("left-on").over(g.x("cut"))
		} else {
			share = g.x("stays").over(n(100))
		}
		left := g.x("cut").times(share)
		springs, _ := g.x("springs").Int64()
		for range springs {
			left = left.times(share)
		}
		return left
	},
	"best-wire": func(g given) number { return g.pitch().over(root3) },
	"cut-to-fit": func(g given) number {
		k := number{}
		if g.has("clearance") {
			k = g.x("clearance")
		} else {
			k = g.x("least-clearance").plus(g.x("most-clearance")).over(n(2))
		}
		feed := g.x("plug").plus(k).minus(g.x("present"))
		if g.words["dial-reads"] == "radius" {
			return feed.over(n(2))
		}
		return feed
	},
	"in-or-out": func(g given) number {
		low := number{}
		if g.has("low") {
			low = g.x("low")
		} else {
			low = g.x("high").minus(g.x("tolerance"))
		}
		return least(g.x("measured").minus(low), g.x("high").minus(g.x("measured")))
	},
	"infeed-from-wires": func(g given) number {
		excess := number{}
		if g.has("excess") {
			excess = g.x("excess")
		} else {
			excess = g.x("reading").minus(g.x("target"))
		}
		return excess.over(n(2)).over(cosOf(g.angle()))
	},
	"over-wires": func(g given) number {
		return g.x("pitch-diameter").plus(g.x("wire").times(n(3))).minus(g.eighths(8))
	},
	"pitch-diameter-from-wires": func(g given) number {
		return g.x("reading").minus(g.x("wire").times(n(3))).plus(g.eighths(8))
	},
	"scratch-pass-check": func(g given) number { return g.x("over").over(g.pitch()).plus(n(1)) },
	"dial-divisions": func(g given) number {
		if g.has("division") {
			return g.x("infeed").over(g.x("division"))
		}
		return g.x("infeed").times(g.x("lines")).over(g.x("turn"))
	},
	"tpi-from-metric-pitch": func(g given) number { return g.inch().over(g.pitch()) },
	"number-size": func(g given) number {
		if g.has("number") {
			return dec("0.060").plus(dec("0.013").times(g.x("number")))
		}
		d, _ := g.thread()
		return d
	},
	"multi-start-lead": func(g given) number { return g.pitch().times(g.starts()) },
	"count-crests": func(g given) number {
		pitch := g.x("last").minus(g.x("first")).over(g.x("crests").minus(n(1)))
		if g.words["wanted"] == "pitch" || g.metric && !g.has("wanted") {
			return pitch
		}
		return g.inch().over(pitch)
	},
	"minor-diameter":         func(g given) number { return g.nominal().minus(g.h1724().times(n(2))) },
	"start-chamfer":          func(g given) number { return g.nominal().minus(g.h1724().times(n(2))) },
	"basic-pitch-diameter":   func(g given) number { return g.nominal().minus(g.eighths(6)) },
	"bore-for-inside-thread": func(g given) number { return g.nominal().minus(g.eighths(10)) },
	"tool-nose-flat":         func(g given) number { return g.pitch().over(n(8)) },
	"lead-angle":             func(g given) number { return g.leadAngle() },
	"side-clearance": func(g given) number {
		if g.has("lead-angle") {
			return g.x("clearance").plus(g.x("lead-angle"))
		}
		return g.x("clearance").plus(g.leadAngle())
	},
	"depth-for-small-blank": func(g given) number {
		under := number{}
		if g.has("under") {
			under = g.x("under")
		} else {
			under = g.nominal().minus(g.x("blank"))
		}
		return g.h1724().minus(under.over(n(2)))
	},
	"threading-speed": func(g given) number {
		return g.x("turning-speed").times(n(12)).over(pi.times(g.diameter())).over(n(4))
	},
	"threading-speed-metric": func(g given) number {
		return g.x("turning-speed").times(n(1000)).over(pi.times(g.diameter())).over(n(4))
	},
	"carriage-speed": func(g given) number {
		return g.x("rpm").over(n(60)).times(g.pitch()).times(g.x("starts"))
	},
	"time-to-shoulder": func(g given) number {
		return g.x("gap").over(g.pitch()).times(n(60)).over(g.x("rpm"))
	},
	"fastest-for-the-gap": func(g given) number {
		return n(60).times(g.x("gap")).over(g.pitch()).over(g.x("seconds"))
	},
	"gear-ratio": func(g given) number { return g.pitch().times(g.x("lead-screw")) },
	"gear-ratio-metric-thread": func(g given) number {
		p := number{}
		if g.has("pitch") {
			p = g.x("pitch")
		} else if g.has("pitch-mm") {
			p = g.x("pitch-mm")
		} else {
			_, p = g.thread()
			p = p.times(dec("25.4"))
		}
		return p.times(n(5)).times(g.x("lead-screw")).over(n(127))
	},
	"compound-other-zero": func(g given) number {
		a := number{}
		switch {
		case !g.has("included"):
			a = g.x("angle")
		case g.has("less"):
			a = g.x("included").over(n(2)).minus(g.x("less"))
		default:
			a = g.x("included").over(n(2))
		}
		return n(90).minus(a)
	},
	"acme-compound-angle": func(g given) number {
		included := map[string]float64{"acme": 29, "stub-acme": 29, "trapezoidal": 30, "whitworth": 55, "unified": 60, "metric": 60, "british-association": 47.5, "conduit": 80, "worm-20": 40, "worm-25": 50}
		if form, ok := g.words["form"]; ok {
			return n(included[form]).over(n(2))
		}
		return g.x("included").over(n(2))
	},
	"compound-travel-needed": func(g given) number {
		return g.h1724().over(cosOf(g.angle())).plus(g.x("spare"))
	},
	"marks-that-fit": func(g given) number {
		// k marks on, the carriage has gone k T/(N M) inches, or k T N/M mm on a metric lead
		// screw; that over the pitch must be whole, and so must a whole turn.
		turn := g.x("gear").over(g.x("lead-screw"))
		if g.metric {
			turn = g.x("gear").times(g.x("lead-screw"))
		}
		marks, _ := g.x("marks").Int64()
		whole := func(x number) bool {
			near := x.plus(dec("0.5")).floor()
			gap := x.minus(near)
			return gap.Abs(gap.Float).Cmp(dec("0.0000001").Float) < 0
		}
		if !whole(turn.over(g.pitch())) {
			return n(0)
		}
		fit := 0.0
		for k := range marks {
			if whole(turn.times(n(float64(k))).over(g.x("marks")).over(g.pitch())) {
				fit++
			}
		}
		return n(fit)
	},
	"boring-bar-room": func(g given) number {
		bore := number{}
		if g.has("bore") {
			bore = g.x("bore")
		} else {
			bore = g.nominal().minus(g.eighths(10))
		}
		return bore.minus(g.x("bar")).minus(g.x("tool")).minus(g.x("withdraw"))
	},
	"next-start": func(g given) number {
		if g.has("lead") {
			return g.x("lead").over(g.x("starts"))
		}
		return g.pitch()
	},
	"bar-stiffness": func(g given) number {
		short := number{}
		if g.has("new-overhang") {
			short = g.x("new-overhang")
		} else {
			short = g.x("overhang").minus(g.x("shorter-by"))
		}
		r := g.x("overhang").over(short)
		return r.times(r).times(r)
	},
	"room-to-start": func(g given) number {
		return g.x("rpm").over(n(60)).times(g.pitch()).times(g.x("seconds"))
	},
	"percent-of-thread": func(g given) number {
		return g.nominal().minus(g.x("bore")).times(n(100)).over(g.eighths(10))
	},
	"relief-groove-diameter": func(g given) number {
		return g.nominal().minus(g.h1724().times(n(2))).minus(g.x("below").times(n(2)))
	},
	"relief-groove-width": func(g given) number {
		return g.x("speed").over(n(60)).times(g.pitch()).times(g.x("seconds"))
	},
}
