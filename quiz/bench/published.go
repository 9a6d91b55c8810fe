package bench

import "scratchpass/calc"

// What the bench takes from published figures, each with its source as content/sources.yaml
// names it. Those that belong to a formula stand in calc, and the bench asks for them: how a
// bar bends (isakov), what a metal resists (rohm, force-table), how it bends itself
// (moduli), how fast it is turned (speed-tables), the limits of size. What is not here and not
// there is chosen: see chosen.go.
const (
	barLimit    = 4.0               // a steel bar stands out at most so many times its diameter (steel-bars)
	leastCut    = calc.Length(.002) // the last cuts on the compound, so that the tool cuts and does not rub (insert-passes)
	wrenchTurns = 3.0               // turns that a pipe thread goes on by wrench, past hand-tight (b1-20-1)
	leastCutMM  = 0.05              // the same where dials are metric, in millimetres (insert-passes)
)

// printedPasses are the fewest and the most passes by pitch in millimetres that the maker
// of inserts prints (insert-passes, the catalogue of 2011).
var printedPasses = []struct{ pitch, least, most float64 }{
	{0.5, 4, 6}, {1, 5, 9}, {1.5, 5, 12}, {2, 6, 14}, {2.5, 7, 15}, {3, 8, 17}, {4, 10, 20}, {6, 11, 22},
}

// weakest is how hard bar or work is to bend where the tool stands. The beam is exact, and
// so is its modulus to a few per cent: only what stands behind it is chosen.
func (j Job) weakest() (float64, error) {
	if j.Side == calc.Inside {
		return calc.BarStiffness(j.StandsOut, j.Bar)
	}
	if j.Hold == Centres {
		return calc.BetweenCentresStiffness(j.Material, j.StandsOut, j.Start)
	}
	return calc.WorkStiffness(j.Material, j.StandsOut, j.Start)
}
