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
	})
}
