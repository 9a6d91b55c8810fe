package answer

import (
	"iter"
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Band is a range of numbers that are all marked alike, both ends included.
type Band struct {
	Low, High float64 // held units; infinite where the range has no end
	Mark      Mark    // its Response stands for the whole band
}

func (b *Band) holds(x float64) bool { return within(x, b.Low, b.High) }

// Bands says what every bare number is marked as, for places that mark without this
// program: the first band that holds the number gives its mark. It is by these bands
// that Mark marks. A band that none could fall into is left out. For answers that are
// not one number it returns nil.
func (e *Expected) Bands() []Band {
	all := e.Kind.bands(e, Response{Coarse: true})
	if all == nil {
		return nil
	}
	var bands []Band
	for band := range all {
		if m := band.Mark; m.Error != "" && e.MarkResponse(m.Response).Error != m.Error {
			continue // an earlier band has all of it
		}
		bands = append(bands, band)
	}
	return bands
}

// Far reports whether a number is so far from the key that a place was lost or another
// thing meant: no side of the part comes into it. It is false for answers that are not
// one exact number.
func (e *Expected) Far(r Response) bool {
	given, key := math.Abs(r.X), math.Abs(e.Key.X)
	return e.Kind.Takeable() && key > 0 && (given > farFrom*key || given*farFrom < key)
}

// farFrom is how many times too large or too small a number is when it is far off.
const farFrom = 6

// yield is what a sequence hands its bands to.
type yield = func(Band) bool

// limitBands are the bands of a size inside limits.
func limitBands(e *Expected) iter.Seq[Band] {
	return func(to func(Band) bool) {
		_ = to(Band{e.Low, e.High, Mark{Verdict: Right, Points: 1, Response: e.Key}}) &&
			e.errorBands(to, nil) &&
			to(Band{math.Inf(-1), math.Inf(1), Mark{Verdict: Wrong}})
	}
}

// quantityBands are the bands of a number: right, the errors, the right number in
// another unit than was written, and then on which side it lies.
func quantityBands(e *Expected, r Response) iter.Seq[Band] {
	return func(to func(Band) bool) {
		low, high, _ := e.Bounds()
		right := Mark{Verdict: Right, Points: 1, Response: e.Key}
		rest := func(to func(Band) bool) bool { return e.unitBands(to, r.Unit) && e.sideBands(to) }
		_ = to(Band{low, high, right}) && (!r.Coarse || e.roundedBand(to, right)) && e.errorBands(to, rest) && rest(to)
	}
}

// roundedBand adds the key with one decimal fewer than asked for, where that is nearer
// to the key than to half-way to any error: 1.6 for 1.64. Of a length that decimal is a
// dial line, so there the tolerance rules.
func (e *Expected) roundedBand(to yield, right Mark) bool {
	u := e.Unit
	if u.Name == machine.InchUnit.Name || u.Name == machine.MMUnit.Name || u.Places < 2 {
		return true
	}
	x := calc.Round(e.Key.X*u.Factor, u.Places-1) / u.Factor
	for i := range e.Errors {
		if math.Abs(x-e.Key.X) > mostOfGap*e.Kind.gap(e, e.Errors[i].Response) {
			return true
		}
	}
	const slack = 1e-9 // what reading and dividing may leave behind
	right.Response = NumberResponse(x)
	return to(Band{x - slack/u.Factor, x + slack/u.Factor, right})
}

// errorBands adds the conventions, which earn credit, and then the other errors. What
// lies near two errors that can't be told apart goes by the rest. Problems that were
// drawn have no such place; those of someone's own numbers may.
func (e *Expected) errorBands(to yield, rest func(yield) bool) bool {
	band := func(k *Known) Band {
		return Band{k.Response.X - e.ErrorTolerance, k.Response.X + e.ErrorTolerance, k.mark()}
	}
	for i := range e.Errors {
		if known := &e.Errors[i]; known.Convention && !to(band(known)) {
			return false
		}
	}
	for i := range e.Errors {
		for j := range e.Errors[:i] {
			known, other := &e.Errors[i], &e.Errors[j]
			both := clip(to, band(known), band(other))
			if known.Convention || other.Convention || sameResult(known, other) || both == nil {
				continue
			}
			if rest != nil && !rest(both) || rest == nil && !both(Band{math.Inf(-1), math.Inf(1), Mark{Verdict: Wrong}}) {
				return false
			}
		}
	}
	for i := range e.Errors {
		if known := &e.Errors[i]; !known.Convention && !to(band(known)) {
			return false
		}
	}
	return true
}

// clip passes on what of a band lies in two others; nil where these do not meet.
func clip(to yield, a, b Band) yield {
	low, high := max(a.Low, b.Low), min(a.High, b.High)
	if low > high {
		return nil
	}
	return func(band Band) bool {
		band.Low, band.High = max(band.Low, low), min(band.High, high)
		return band.Low > band.High || to(band)
	}
}

// unitBands adds the right number in another unit than the one that was written, or than
// the one asked for where none was.
func (e *Expected) unitBands(to yield, written string) bool {
	if e.Key.X == 0 || written == e.Unit.Name {
		return true
	}
	band := func(factor float64) Band {
		x, tolerance := e.Key.X*factor, e.Tolerance*factor
		return Band{x - tolerance, x + tolerance, Mark{Verdict: WrongUnit, Points: halfPoint, Response: NumberResponse(x)}}
	}
	if written == "" {
		for _, factor := range otherUnits(e.Unit) {
			if !to(band(factor)) { // 55.6 where 0.0556 in was meant
				return false
			}
		}
		return true
	}
	one, ok := unitsOfLength[written]
	return !ok || to(band(one*e.Unit.Factor)) // "0.0556 mm": the number of the key with another unit
}

// unitsOfLength are the units of length that may be written, in inches.
var unitsOfLength = map[string]float64{"in": 1, "mm": 1 / calc.MillimetresPerInch, "thou": 0.001}

// otherUnits are the units that a bare number is mistaken for: the number is right,
// its unit is not. Each is a factor on the shown number.
func otherUnits(u machine.Unit) []float64 {
	switch u.Name {
	case machine.InchUnit.Name:
		return inchFactors // thou or mm typed as inches
	case machine.MMUnit.Name:
		return mmFactors
	case "percent":
		return percentFactors // 0.81 for 81 percent
	}
	return nil
}

var (
	inchFactors    = []float64{1000, calc.MillimetresPerInch}
	mmFactors      = []float64{1 / calc.MillimetresPerInch, 1000 / calc.MillimetresPerInch}
	percentFactors = []float64{0.01}
)

// MeantIn returns the numbers, in held units, that a bare number may have been meant as,
// had it been written in another unit.
func MeantIn(u machine.Unit, x float64) []float64 {
	var all []float64
	for _, factor := range otherUnits(u) {
		all = append(all, x/factor)
	}
	return all
}

// sideBands adds all other numbers: near the key on either side, as near with the other
// sign, and far off.
func (e *Expected) sideBands(to yield) bool {
	key, inf := e.Key.X, math.Inf(1)
	if key == 0 {
		return e.sideBand(to, -inf, 0, -1) && e.sideBand(to, 0, inf, 1)
	}
	return e.sideBand(to, min(key, key/farFrom), max(key, key/farFrom), key/2) &&
		e.sideBand(to, min(key, key*farFrom), max(key, key*farFrom), key*2) &&
		e.sideBand(to, min(-key/farFrom, -key*farFrom), max(-key/farFrom, -key*farFrom), -key) &&
		e.sideBand(to, -inf, inf, 2*farFrom*key)
}

// sideBand adds numbers that fit nothing; at is one of them.
func (e *Expected) sideBand(to yield, low, high, at float64) bool {
	return to(Band{low, high, Mark{Verdict: e.side(at), Response: NumberResponse(at)}})
}

// side tells on which side of the key a wrong number lies.
func (e *Expected) side(x float64) Verdict {
	switch {
	case e.Scrap == NoScrapSide, e.Far(Response{X: x}):
		return Wrong
	case x < 0 && e.Key.X > 0: // a direction was mixed up; no side of the part is meant
		return Wrong
	case (x > e.Key.X) == (e.Scrap == ScrapHigh):
		return ScrapWrong
	}
	return SafeWrong
}
