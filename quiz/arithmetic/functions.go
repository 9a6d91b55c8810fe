package arithmetic

import (
	"maps"
	"math"
	"slices"

	"scratchpass/calc"
)

// formulaFunctions are what a formula can call: those of the calculator, some for rounding,
// and those of calc. Lengths are numbers in the unit that the formula works in; a function
// that holds only in one says which. What a function refuses has no value.
var formulaFunctions = func() map[string]any {
	all := map[string]any{
		"abs": math.Abs, "min": math.Min, "max": math.Max,
		"floor": func(x float64) float64 { return math.Floor(x + hair) },
		"ceil":  func(x float64) float64 { return math.Ceil(x - hair) },
		"round": func(x, places float64) float64 {
			return calc.Round(x, int(math.Max(0, math.Min(places, mostPlaces))))
		},

		"pitch":     func(n float64) float64 { return inches(calc.PitchOfTPI.Of(calc.ThreadsPerInch(n))) },
		"depth":     func(P float64) float64 { return inches(calc.ExternalDepth.Of(calc.Inches(P))) },
		"whitworth": func(P float64) float64 { return inches(calc.WhitworthDepth.Of(calc.Inches(P))) },
		"minor":     func(D, P float64) float64 { return inches(calc.MinorDiameter.Of(calc.Inches(D), calc.Inches(P))) },
		"bore":      func(D, P float64) float64 { return inches(calc.BasicBore.Of(calc.Inches(D), calc.Inches(P))) },
		"pitchdia":  func(D, P float64) float64 { return inches(calc.PitchDiameter.Of(calc.Inches(D), calc.Inches(P))) },
		"travel":    func(h, a float64) float64 { return inches(calc.TravelForDepth.Of(calc.Inches(h), calc.Degrees(a))) },
		"bestwire":  func(P float64) float64 { return inches(calc.BestWire.Of(calc.Inches(P))) },
		"overwires": func(E, W, P float64) float64 {
			return inches(calc.ReadingOverWires.Of(calc.Inches(E), calc.Inches(W), calc.Inches(P)))
		},
		"percent": func(D, B, P float64) float64 {
			return held(calc.ThreadPercent.Of(calc.Inches(D), calc.Inches(B), calc.Inches(P)))
		},
		"leadangle": func(l, E float64) float64 { return held(calc.ThreadSlope.Of(calc.Inches(l), calc.Inches(E))) },
		"rpm":       func(V, D float64) float64 { return held(calc.TurningSpeed.Of(calc.FeetPerMinute(V), calc.Inches(D))) },
		"rpmmm": func(V, D float64) float64 {
			return held(calc.TurningSpeedMM.Of(calc.MetresPerMinute(V), calc.Millimetres(D)))
		},
	}
	for name, f := range functions {
		all[name] = f
	}
	return all
}()

// hair is what binary fractions may leave of a whole number: 0.3 / 0.1 is 3.
const hair = 1e-9

// mostPlaces is how many decimals round keeps at most.
const mostPlaces = 9

// FormulaNames are the functions of formulas, sorted, and pi.
func FormulaNames() []string {
	return append(slices.Sorted(maps.Keys(formulaFunctions)), "pi")
}

// inches is a length of calc as a number; what calc refuses has no value.
func inches(l calc.Length, err error) float64 { return held(l.Inches(), err) }

// held is a quantity of calc as the number it is held in.
func held[X ~float64](x X, err error) float64 {
	if err != nil {
		return math.NaN()
	}
	return float64(x)
}
