package calc

import "math"

// mostPasses is the longest schedule that is worked out.
const mostPasses = 500

// EqualSteps returns the total infeed after each of n passes of the same feed:
//
//	total_k = F k / n
//
// total is 0.001 to 1 in, n 1 to 500.
func EqualSteps(total Length, n int) ([]Length, error) {
	return schedule(total, n, func(k int) float64 { return float64(k) / float64(n) })
}

// EqualArea returns the total infeed after each of n passes that take the same
// section of chip with a sharp tool, the square-root rule:
//
//	total_k = F sqrt(k / n)
//
// Source: the area of a triangle grows with the square of its height.
func EqualArea(total Length, n int) ([]Length, error) {
	return schedule(total, n, func(k int) float64 { return math.Sqrt(float64(k) / float64(n)) })
}

func schedule(total Length, n int, share func(k int) float64) ([]Length, error) {
	if err := firstError(between("total infeed", total, Thou, 1), inRange("passes", float64(n), 1, mostPasses)); err != nil {
		return nil, err
	}
	totals := make([]Length, n)
	for k := range n {
		totals[k] = total.Times(share(k + 1))
	}
	totals[n-1] = total
	return totals, nil
}

// PassesForFirstCut returns how many passes the square-root rule needs when the
// first may take so much:
//
//	n = (F / a)^2, rounded up
//
// total and first are 0.001 to 1 in, first at most total; an error where it comes to
// more than 500 passes.
func PassesForFirstCut(total, first Length) (int, error) {
	if err := firstError(between("total infeed", total, Thou, 1), between("first cut", first, Thou.Times(0.1), total)); err != nil {
		return 0, err
	}
	n := total.Over(first) * total.Over(first)
	if isWhole(n) {
		n = math.Round(n)
	}
	passes := toInt(math.Ceil(n))
	return passes, inRange("passes", float64(passes), 1, mostPasses)
}

// FeedToFit returns the straight-in feed that is left until a thread fits a
// measured mating part with a clearance on the pitch diameter, as a dial shows it:
//
//	diameter to take off or add = (plug + clearance) - present   inside
//	                              present - (nut - clearance)    outside
//	dial = that on a dial that reads diameter, half of it on one that reads travel
//
// mating and present are pitch diameters; clearance is 0 to 0.1 in. An error where
// the thread is past its size already: no feed puts metal back.
func FeedToFit(side Side, mating, present, clearance Length, reads DialReads) (Length, error) {
	err := firstError(between("pitch diameter of the mating part", mating, Thou, LargestNominal),
		between("present pitch diameter", present, Thou, LargestNominal), between("clearance", clearance, 0, 0.1))
	if err != nil {
		return 0, err
	}
	diametral := mating + clearance - present
	if side == Outside {
		diametral = present - (mating - clearance)
	}
	if diametral < 0 {
		return 0, badLength("present pitch diameter", present, "a size from which metal must still come off; this one is past the fit by "+LengthText(-diametral))
	}
	return diametral.Times(0.5 * reads.PerRadial()), nil
}

// EvenLoad is EqualArea after one pass: T is the total infeed, p the pass and Q the
// number of passes. p is 1 to Q.
var EvenLoad = Formula[func(total Length, pass, passes int) (Length, error)]{"T x sqrt(p / Q)",
	func(total Length, pass, passes int) (Length, error) {
		totals, err := EqualArea(total, passes)
		if err := firstError(err, inRange("pass", float64(pass), 1, float64(passes))); err != nil {
			return 0, err
		}
		return totals[pass-1], nil
	}}

// The formulas of FeedToFit for a bore that takes a plug: on a dial that reads diameter,
// and on one that reads travel. E1 is the pitch diameter of the plug, E the present one,
// k the clearance; g is what the first formula gives.
var (
	FitInside = Formula[func(mating, present, clearance Length) (Length, error)]{"(E1 + k) - E",
		func(mating, present, clearance Length) (Length, error) {
			return FeedToFit(Inside, mating, present, clearance, ReadsDiameter)
		}}
	FitInsideOnTravel = Formula[func(mating, present, clearance Length) (Length, error)]{"g / 2",
		func(mating, present, clearance Length) (Length, error) {
			return FeedToFit(Inside, mating, present, clearance, ReadsRadius)
		}}
)
