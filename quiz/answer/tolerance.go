package answer

import (
	"math"

	"scratchpass/quiz/machine"
)

// Tolerance is how far from the key an answer may be, before the gap to the nearest
// common error narrows it: half the smallest dial division used, or what rounding on the
// way costs.
type Tolerance struct {
	Inch  float64 // for a length in an inch problem
	MM    float64 // for a length in a metric problem; 0 takes Inch
	Other float64 // for anything else, in its own unit

	Relative float64 // share of the key, instead of all these: for what is only known so well

	// Printed counts it from the printed key as well as from the key itself: who is that far
	// off what the key shows is right on both sides.
	Printed bool

	Safe  SafeSide // for a limit that must be kept: only numbers on this side of the key are right
	Reach float64  // share of the key by which they may be on that side, where that is more
}

// SafeSide is the side of the key on which a number is right too. A least or a highest
// value is a limit: beyond it a number is wrong, however near.
type SafeSide int

// Both sides, or only one.
const (
	BothSides SafeSide = iota
	Below              // "at most", "highest", "largest"
	Above              // "at least", "smallest"
)

// of returns the tolerance in held units for an answer.
func (t Tolerance) of(e *Expected) float64 {
	if t.Relative > 0 {
		return t.Relative * math.Abs(e.Key.X)
	}
	return t.held(e.Unit)
}

// held returns the tolerance in held units for an answer in this unit.
func (t Tolerance) held(u machine.Unit) float64 {
	switch {
	case u.Name == machine.InchUnit.Name, u.Name == machine.MMUnit.Name && t.MM == 0:
		return t.Inch
	case u.Name == machine.MMUnit.Name:
		return t.MM / u.Factor
	}
	return t.Other
}

// errorShare is how much of the tolerance of a right answer counts for naming a common
// error. To name an error that no one made is worse than to say that it can't be told.
const errorShare = 0.8

// mostOfGap is how much of the gap to its neighbour a tolerance may take up.
const mostOfGap = 0.4

// settleNumbers is Settle for numbers.
func settleNumbers(e *Expected, t Tolerance) bool {
	base := t.of(e)
	shown := math.Pow10(-e.Unit.Places) / e.Unit.Factor // one unit of the last place
	least := max(base*0.3, shown*0.6)
	toKey, apart, toSafe := math.Inf(1), math.Inf(1), math.Inf(1)
	for i := range e.Errors {
		known := &e.Errors[i]
		if known.Near {
			continue // it is right, whatever the tolerance
		}
		toKey = min(toKey, e.Kind.gap(e, known.Response))
		if (known.Response.X < e.Key.X) == (e.Safe == Below) {
			toSafe = min(toSafe, e.Kind.gap(e, known.Response))
		}
		for _, x := range e.Alike {
			toKey = min(toKey, math.Abs(known.Response.X-x))
		}
		for j := range e.Errors[:i] {
			if other := &e.Errors[j]; !other.Near && !sameResult(known, other) {
				apart = min(apart, distance(known.Response, other.Response))
			}
		}
	}
	e.Tolerance = min(base, mostOfGap*toKey)
	e.ErrorTolerance = min(base*errorShare, mostOfGap*toKey, mostOfGap*apart)
	e.Reach = min(t.Reach*math.Abs(e.Key.X), mostOfGap*toSafe)
	e.below, e.above = 0, 0
	if t.Printed {
		room := max(0, (1-mostOfGap)*toKey-e.Tolerance) // up to where an error may begin
		off := e.typed(e.Key.X) - e.Key.X
		e.below, e.above = min(max(0, -off), room), min(max(0, off), room)
	}
	e.dropBlurred()
	if e.Tolerance < least || e.ErrorTolerance < least {
		e.Tolerance, e.ErrorTolerance = max(e.Tolerance, shown*0.6), max(e.ErrorTolerance, shown*0.6)
		return false
	}
	return true
}

// distance is how far two responses are apart: in a row, by the reading that tells them
// apart best.
func distance(x, y Response) float64 {
	if x.Xs == nil {
		return math.Abs(x.X - y.X)
	}
	most := 0.0
	for i := range min(len(x.Xs), len(y.Xs)) {
		most = max(most, math.Abs(x.Xs[i]-y.Xs[i]))
	}
	return most
}

// DropCoinciding leaves out the common errors that with these numbers give the right
// answer: they are no errors here. It sets the tolerance to half of what the task allows.
func (e *Expected) DropCoinciding(t Tolerance) {
	e.Tolerance = t.of(e) * 0.5
	kept := make([]Known, 0, len(e.Errors))
	for _, known := range e.Errors {
		if known.Near || !e.Right(known.Response) {
			kept = append(kept, known)
		}
	}
	e.Errors = kept
}
