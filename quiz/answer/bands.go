package answer

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Band is a range of numbers that are all marked alike, both ends included.
type Band struct {
	Low, High float64 // held units; infinite where the range has no end
	Mark      Mark    // its Response stands for the whole band
}

// Bands says what every bare number is marked as, for places that mark without this
// program: the first band that holds the number gives its mark. It is by these bands
// that Mark marks. A band that none could fall into is left out. For answers that are
// not one number it returns nil.
func (e *Expected) Bands() []Band {
	var bands []Band
	for _, b := range e.Kind.bands(e, Response{Coarse: true}) {
		at := NumberResponse(b.at)
		if b.known != nil && e.MarkResponse(at).Error != b.known.Name {
			continue // an earlier band has all of it
		}
		bands = append(bands, Band{b.low, b.high, b.mark(at)})
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

// band is a Band as it is found: what becomes a mark only where the band counts.
type band struct {
	low, high float64
	verdict   Verdict
	points    float64
	at        float64 // a number that stands for the band
	known     *Known  // the error whose band it is, or nil
}

func (b *band) holds(x float64) bool { return within(x, b.low, b.high) }

// mark is the mark of a number in the band.
func (b *band) mark(r Response) Mark {
	m := Mark{Verdict: b.verdict, Points: b.points, Response: r}
	if b.known != nil {
		m.Error = b.known.Name
	}
	return m
}

// usualBands is how many bands have room without asking for memory.
const usualBands = 24

// limitBands adds the bands of a size inside limits.
func limitBands(e *Expected, all []band) []band {
	all = append(all, band{low: e.Low, high: e.High, verdict: Right, points: 1, at: e.Key.X})
	return e.restBands(e.errorBands(all, ""), "")
}

// quantityBands adds the bands of a number: right, the errors, the right number in
// another unit than was written, and then on which side it lies.
func quantityBands(e *Expected, r Response, all []band) []band {
	low, high, _ := quantity{}.bounds(e)
	all = append(e.nearBands(all), band{low: low, high: high, verdict: Right, points: 1, at: e.Key.X})
	for _, x := range e.Alike {
		all = append(all, band{low: x - e.Tolerance, high: x + e.Tolerance, verdict: Right, points: 1, at: x})
	}
	if r.Coarse {
		all = e.roundedBand(all)
	}
	return e.restBands(e.errorBands(all, r.Unit), r.Unit)
}

// restBands adds what is neither right nor a known error: all numbers. written is the unit
// that was.
func (e *Expected) restBands(all []band, written string) []band {
	if !e.Kind.Takeable() { // a size inside limits has no side
		return append(all, band{low: math.Inf(-1), high: math.Inf(1), verdict: Wrong})
	}
	return e.sideBands(e.unitBands(all, written))
}

// roundedBand adds the key with one decimal fewer than asked for, where that is nearer
// to the key than to half-way to any error: 1.6 for 1.64. Of a length that decimal is a
// dial line, so there the tolerance rules.
func (e *Expected) roundedBand(all []band) []band {
	u := e.Unit
	if u.Name == machine.InchUnit.Name || u.Name == machine.MMUnit.Name || u.Places < 2 {
		return all
	}
	x := calc.Round(e.Key.X*u.Factor, u.Places-1) / u.Factor
	if low, high := e.limits(); x < low || x > high {
		return all
	}
	for i := range e.Errors {
		if math.Abs(x-e.Key.X) > mostOfGap*distance(e.Errors[i].Response, e.Key) {
			return all
		}
	}
	slack := 1e-9 / u.Factor // what reading and dividing may leave behind
	return append(all, band{low: x - slack, high: x + slack, verdict: Right, points: 1, at: x})
}

// errorBands adds the conventions, which earn credit, and then the other errors. What
// lies near two errors that can't be told apart goes by the rest. Problems that were
// drawn have no such place; those of someone's own numbers may.
func (e *Expected) errorBands(all []band, written string) []band {
	for i := range e.Errors {
		if known := &e.Errors[i]; known.Convention && !known.Near {
			all = append(all, e.errorBand(known))
		}
	}
	for i := range e.Errors {
		for j := range e.Errors[:i] {
			known, other := &e.Errors[i], &e.Errors[j]
			low, high := max(known.Response.X, other.Response.X)-e.ErrorTolerance, min(known.Response.X, other.Response.X)+e.ErrorTolerance
			if low <= high && !known.Convention && !other.Convention && !sameResult(known, other) {
				n := len(all)
				all = clipped(e.restBands(all, written), n, low, high)
			}
		}
	}
	for i := range e.Errors {
		if known := &e.Errors[i]; !known.Convention {
			all = append(all, e.errorBand(known))
		}
	}
	return all
}

// errorBand is the band round what an error gives.
func (e *Expected) errorBand(known *Known) band {
	verdict, points := known.worth()
	x := known.Response.X
	return band{low: x - e.ErrorTolerance, high: x + e.ErrorTolerance, verdict: verdict, points: points, at: x, known: known}
}

// clipped keeps of the bands from the n-th on what lies between two numbers.
func clipped(all []band, n int, low, high float64) []band {
	kept := all[:n]
	for _, b := range all[n:] {
		b.low, b.high = max(b.low, low), min(b.high, high)
		if b.low <= b.high {
			kept = append(kept, b)
		}
	}
	return kept
}

// unitBands adds the right number in another unit than the one that was written, or than
// the one asked for where none was.
func (e *Expected) unitBands(all []band, written string) []band {
	if e.Key.X == 0 || written == e.Unit.Name {
		return all
	}
	if written == "" {
		for _, factor := range otherUnits(e.Unit) {
			all = append(all, e.unitBand(factor)) // 55.6 where 0.0556 in was meant
		}
		return all
	}
	if one, ok := unitsOfLength[written]; ok {
		all = append(all, e.unitBand(one*e.Unit.Factor)) // "0.0556 mm": the number of the key with another unit
	}
	return all
}

func (e *Expected) unitBand(factor float64) band {
	low, high, _ := e.Bounds()
	return band{low: low * factor, high: high * factor, verdict: WrongUnit, points: halfPoint, at: e.Key.X * factor}
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
func (e *Expected) sideBands(all []band) []band {
	key, inf := e.Key.X, math.Inf(1)
	if key == 0 {
		return append(all, e.sideBand(-inf, 0, -1), e.sideBand(0, inf, 1))
	}
	return append(all,
		e.sideBand(min(key, key/farFrom), max(key, key/farFrom), key/2),
		e.sideBand(min(key, key*farFrom), max(key, key*farFrom), key*2),
		e.sideBand(min(-key/farFrom, -key*farFrom), max(-key/farFrom, -key*farFrom), -key),
		e.sideBand(-inf, inf, 2*farFrom*key))
}

// sideBand is numbers that fit nothing; at is one of them.
func (e *Expected) sideBand(low, high, at float64) band {
	return band{low: low, high: high, verdict: e.side(at), at: at}
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
