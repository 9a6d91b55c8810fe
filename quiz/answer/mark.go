package answer

import (
	"math"
	"strings"

	"scratchpass/calc"
)

// Verdict is what an answer was found to be. The text is that of JSON and of records.
type Verdict string

// The verdicts.
const (
	Right      Verdict = "right"
	Convention Verdict = "convention" // right by another published convention
	WrongUnit  Verdict = "unit"       // the right number in another unit
	KnownError Verdict = "slip"       // one common error gives this answer
	ScrapWrong Verdict = "scrap-side" // wrong, and on the side that ruins the part
	SafeWrong  Verdict = "safe-side"  // wrong, but metal is still there
	Wrong      Verdict = "wrong"
	Unread     Verdict = "unread" // not understood: asked again, never marked
)

// Verdicts are those that an answer that was marked can have: all but Unread.
var Verdicts = []Verdict{Right, Convention, WrongUnit, KnownError, ScrapWrong, SafeWrong, Wrong}

// Correct reports whether an answer of this verdict counts as right.
func (v Verdict) Correct() bool { return v == Right || v == Convention }

// Mark is the result of marking one answer.
type Mark struct {
	Verdict  Verdict
	Error    string // the common error or the convention, when the answer fits one and no other
	Points   float64
	Response Response
	Passed   bool         // no answer was tried
	Unread   *UnreadError // what would have been understood, for Unread
}

// Correct reports whether the answer counts as right.
func (m Mark) Correct() bool { return m.Verdict.Correct() }

// halfPoint is what the right number in the wrong unit earns: the working was right,
// the part would not have been. A part of what is right, and nothing wrong, earns it too.
const halfPoint = 0.5

// Mark marks what a learner typed.
func (e *Expected) Mark(text string) Mark {
	r, err := e.Read(text)
	if err != nil {
		return Mark{Verdict: Unread, Unread: unreadOf(err, text)}
	}
	r.Coarse = decimals(text) < e.Unit.Places
	return e.MarkResponse(r)
}

// decimals counts the decimals that were typed.
func decimals(text string) int {
	text = strings.TrimRight(strings.TrimSpace(narrow(text)), " abcdefghijklmnopqrstuvwxyz")
	_, after, point := strings.Cut(text, ".")
	if !point && strings.Count(text, ",") == 1 {
		_, after, _ = strings.Cut(text, ",")
	}
	return len(after)
}

// MarkResponse marks an answer that has been read. Right comes before every common
// error. An error is named only when the answer fits exactly one, or one and those that
// give the same result.
func (e *Expected) MarkResponse(r Response) Mark { return e.Kind.mark(e, r) }

// markNumber is the mark of the first band that holds the number.
func markNumber(bands []band, r Response) Mark {
	for i := range bands {
		if bands[i].holds(r.X) {
			return bands[i].mark(r)
		}
	}
	return Mark{Verdict: Wrong, Response: r}
}

// mark of answers that are not one number: right, one common error, or wrong.
func (common) mark(e *Expected, r Response) Mark {
	if e.Right(r) {
		return Mark{Verdict: Right, Points: 1, Response: r}
	}
	if known := e.fits(r); known != nil {
		m := known.mark()
		m.Response = r
		return m
	}
	if e.inOtherUnit(r) {
		return Mark{Verdict: WrongUnit, Points: halfPoint, Response: r}
	}
	return Mark{Verdict: Wrong, Response: r}
}

// mark is what an answer earns that is just what the error gives.
func (k *Known) mark() Mark {
	verdict, points := k.worth()
	return Mark{Verdict: verdict, Error: k.Name, Points: points, Response: k.Response}
}

// worth is what such an answer is found to be, and its points.
func (k *Known) worth() (v Verdict, points float64) {
	switch {
	case k.Partial != nil: // a part of what is right: nothing wrong in it, but not all
		return SafeWrong, halfPoint
	case k.Convention:
		return Convention, 1
	}
	return KnownError, 0
}

// fits returns the error that gives this answer, or nil when none or several do. A
// convention that fits comes first: it earns credit.
func (e *Expected) fits(r Response) *Known {
	var found *Known
	for i := range e.Errors {
		known := &e.Errors[i]
		partly := known.Partial != nil && known.Partial(e.Key, r)
		if !partly && !e.Kind.Same(e, r, known.Response, e.ErrorTolerance) {
			continue
		}
		switch {
		case found == nil, known.Convention && !found.Convention:
			found = known
		case !sameResult(found, known) && !found.Convention:
			return nil
		}
	}
	return found
}

// inOtherUnit reports whether all numbers of a row would be right in another unit.
func (e *Expected) inOtherUnit(r Response) bool {
	if len(r.Xs) == 0 || len(r.Xs) != len(e.Key.Xs) || r.Unit != "" {
		return false
	}
	for _, factor := range otherUnits(e.Unit) {
		shown := make([]float64, len(r.Xs))
		for i, x := range r.Xs {
			shown[i] = x / factor
		}
		if e.Kind.Same(e, NumbersResponse(shown...), e.Key, e.Tolerance) {
			return true
		}
	}
	return false
}

// within reports whether x lies between two numbers, both included.
func within(x, low, high float64) bool {
	switch {
	case math.IsInf(low, -1) && math.IsInf(high, 1):
		return true
	case math.IsInf(low, -1):
		return x <= high
	case math.IsInf(high, 1):
		return x >= low
	}
	return calc.Within(x, (low+high)/2, (high-low)/2)
}
