package calc

import (
	"math"
	"strings"
)

// LeftOnAfterSprings returns how much of a commanded cut is still on the part
// after its own pass and s spring passes, when bar and tool give way so that each
// pass leaves the share r of what it was asked to take:
//
//	left = cut x r^(1 + s)
//
// cut is 0 to 0.1 in, r is 0 up to but not including 1, s is 0 to 50.
// Source: a geometric series; the ratio itself is LagRatio.
func LeftOnAfterSprings(cut Length, lag float64, springs int) (Length, error) {
	err := firstError(between("cut", cut, 0, 0.1), inRange("share left on", lag, 0, 0.999),
		inRange("spring passes", float64(springs), 0, 50))
	if err != nil {
		return 0, err
	}
	return cut.Times(math.Pow(lag, float64(1+springs))), nil
}

// DepthAfterPass returns how deep the groove is after one pass at a setting, when bar
// and tool give way and leave the share r of what they were asked to take:
//
//	depth = set - (set - before) r
//
// A setting that is not deeper than the groove takes nothing. before and set are 0 to
// 1 in, r is 0 up to but not including 1. One cut and s of these at the same setting
// leave cut x r^(1 + s): LeftOnAfterSprings.
func DepthAfterPass(before, set Length, lag float64) (Length, error) {
	err := firstError(between("depth before", before, 0, 1), between("depth set", set, 0, 1), inRange("share left on", lag, 0, 0.999))
	if err != nil {
		return 0, err
	}
	if set <= before {
		return before, nil
	}
	return set - (set - before).Times(lag), nil
}

// LeftAfter is LeftOnAfterSprings for so many spring passes, 0 to 50: e is the cut and q
// the share that each pass leaves on, once for the cut and once for each spring pass.
//
//	e x q, e x q x q, e x q x q x q, ...
func LeftAfter(springs int) Formula[func(cut Length, lag float64) (Length, error)] {
	return Formula[func(cut Length, lag float64) (Length, error)]{"e" + strings.Repeat(" x q", 1+clamp(springs, 0, 50)),
		func(cut Length, lag float64) (Length, error) { return LeftOnAfterSprings(cut, lag, springs) }}
}
