package answer

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Factors that get lost or counted twice, and a place that is; and shares of what an error is
// off, on its side and on the other.
var (
	lostFactors = []float64{2, 0.5, 1.5, 2.0 / 3, 1.25, 0.8, 3, 1.0 / 3, 10, 0.1}
	offShares   = []float64{-1, 0.5, -0.5, 2, -2, 1.5, -1.5}
)

// nearShare is how far off errors are, as a share of the key, that are beside it: a factor of
// a diameter is no diameter that anyone would take for right.
const nearShare = 0.3

// plausible are wrong numbers as someone might get them: what a lost factor gives, of the key
// and of what the errors give, or, where all errors lie beside the key, what is as much off.
// Were all made of the key, whoever saw them would know which one it is. They are whole where
// it is, and angles below a right one where it is.
func plausible(e *Expected) []Response {
	shown := e.Key.X * e.Unit.Factor
	whole := e.Unit.Count || e.Unit.Places == 0 || calc.Within(shown, math.Round(shown), 1e-9)
	sharp := e.Unit.Name == machine.DegreeUnit.Name && math.Abs(shown) < 90
	var all []Response
	add := func(held float64) {
		x := held * e.Unit.Factor
		if whole {
			x = math.Round(x)
		}
		if x*shown > 0 && !(sharp && math.Abs(x) >= 90) || shown == 0 && x != 0 {
			all = append(all, NumberResponse(x/e.Unit.Factor))
		}
	}
	beside := len(e.Errors) > 0
	for i := range e.Errors {
		beside = beside && math.Abs(e.Errors[i].Response.X-e.Key.X) < nearShare*math.Abs(e.Key.X)
	}
	bases := []float64{e.Key.X}
	for i := range e.Errors {
		x := e.Errors[i].Response.X
		bases = append(bases, x)
		for _, share := range offShares {
			if beside {
				add(e.Key.X + share*(x-e.Key.X))
			}
		}
	}
	for _, base := range bases {
		for _, times := range lostFactors {
			if !beside {
				add(base * times)
			}
		}
	}
	return all
}
