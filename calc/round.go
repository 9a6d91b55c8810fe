package calc

import (
	"math"
	"strconv"
)

// Round returns x to the given number of decimal places (0 to 12), halves away
// from zero. A half that binary arithmetic has made a hair too small still
// counts as a half: 0.0625 to three places is 0.063, as in the shop, and so is
// the sum of two numbers that ought to be 0.0625.
//
// Round returns 0 for NaN and the infinities.
func Round(x float64, places int) float64 {
	x = finite(x)
	p := math.Pow10(clamp(places, 0, 12))
	scaled := x * p
	if math.Abs(scaled) >= 1<<52 { // no decimals left to round
		return x
	}
	nudge := 1e-9 + math.Abs(scaled)*1e-14
	return math.Round(scaled+math.Copysign(nudge, x))/p + 0
}

// Fixed prints x with exactly the given number of decimal places (0 to 12),
// rounded by Round, with a leading zero and never as minus zero.
func Fixed(x float64, places int) string {
	places = clamp(places, 0, 12)
	r := Round(x, places)
	if r == 0 {
		r = 0 // drops the sign of minus zero
	}
	return strconv.FormatFloat(r, 'f', places, 64)
}

// Shortest prints x with as few decimals as it needs, at most the given places.
func Shortest(x float64, places int) string {
	return strconv.FormatFloat(Round(x, places)+0, 'f', -1, 64)
}

// Within reports whether got lies within tol of want, the edges included. The
// edges have a slack of a billionth of tol, because 0.0480 - 0.0475 is not
// 0.0005 in binary and an answer exactly on the edge is right.
//
// It reports false when any of the three is NaN or infinite, or tol is negative.
func Within(got, want, tol float64) bool {
	if tol < 0 || !isFinite(got) || !isFinite(want) || !isFinite(tol) {
		return false
	}
	slack := tol*1e-9 + math.Max(math.Abs(got), math.Abs(want))*1e-14
	return math.Abs(got-want) <= tol+slack
}

// NearRoundingEdge reports whether x, shown to the given places, lies within
// share (0 to 0.5) of a unit in the last place of the edge between two
// printed values. Someone who carried one digit fewer would print the other.
// A value exactly on the edge (0.03125 to four places) is not near it: everyone
// has the same digits there.
func NearRoundingEdge(x float64, places int, share float64) bool {
	scaled := math.Abs(finite(x)) * math.Pow10(clamp(places, 0, 12))
	off := math.Abs(scaled - math.Floor(scaled) - 0.5)
	return off > 1e-7 && off < share
}

func isFinite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// finite returns x, or 0 where x is NaN or infinite. Callers that could meet
// such a value on honest input return an error instead.
func finite(x float64) float64 {
	if !isFinite(x) {
		return 0
	}
	return x
}

func clamp(i, low, high int) int { return max(low, min(i, high)) }

// floorNear is the floor, but a value a billionth below a whole number counts
// as that number.
func floorNear(x float64) float64 {
	if r := math.Round(x); isWhole(x) {
		return r
	}
	return math.Floor(x)
}

// isWhole reports whether x is a whole number to one part in a billion.
func isWhole(x float64) bool {
	return isFinite(x) && math.Abs(x-math.Round(x)) < 1e-9*math.Max(1, math.Abs(x))
}

// toInt converts to int, held to a range where that is exact.
func toInt(x float64) int {
	return int(math.Max(-1<<52, math.Min(finite(x), 1<<52)))
}
