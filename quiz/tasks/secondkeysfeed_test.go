package tasks_test

import "maps"

// The second computations of feeding in, of Acme and pipe threads and of several starts.
func init() {
	maps.Copy(second, map[string]func(g given) number{
		"alternate-flank-shift": func(g given) number {
			depth := g.x("infeed")
			if g.words["dial-reads"] == "diameter" {
				depth = depth.over(n(2))
			}
			return depth.over(root3) // the tangent of 30 degrees is one over the root of 3
		},
		"acme-depth": func(g given) number {
			return g.pitch().over(n(2)).plus(acmeRoom(g.pitch()))
		},
		"acme-tip": func(g given) number { // 0.0052 and 0.0026 are twice the clearance, times the tangent of 14.5 degrees, rounded
			return g.pitch().times(dec("0.3707")).minus(acmeRoom(g.pitch()).times(dec("0.52")))
		},
		"acme-nut-bore": func(g given) number { return g.x("nominal").minus(g.pitch()) },
		"acme-allowance": func(g given) number {
			thousandths := map[string]float64{"2G": 8, "3G": 6, "4G": 4}[g.words["class"]]
			return g.x("nominal").minus(g.pitch().over(n(2))).minus(g.x("nominal").sqrt().times(n(thousandths)).over(n(1000)))
		},
		"taper-pipe-depth": func(g given) number { return g.pitch().times(n(4)).over(n(5)).minus(g.x("done")) },
		"taper-set-over":   func(g given) number { return g.x("between-centres").over(n(16)).over(n(2)) },
		"pipe-gauge-turns": func(g given) number { // what 3/4 in to the foot is on one side
			return g.pitch().times(g.x("turns")).times(dec("0.75")).over(n(12)).over(n(2))
		},
		"starts-by-compound": func(g given) number {
			return g.x("start").plus(g.pitch().times(g.x("which").minus(n(1)))).mod(g.x("turn"))
		},
	})
}

// acmeRoom is the clearance at the root of an Acme screw, in inches.
func acmeRoom(pitch number) number {
	if pitch.less(dec("0.0999")) {
		return dec("0.005")
	}
	return dec("0.010")
}
