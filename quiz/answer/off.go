package answer

import (
	"math"

	"scratchpass/calc"
)

// Off is by how much a number that was given differs from the printed key.
type Off struct {
	Number int     // which number of a row, from 1; 1 also where there is only one
	By     float64 // in the unit of the answer, at its decimals; above 0 where more was given
	Text   string  // how much, without a sign, with the unit
}

// Off lists the numbers of a response that are not the printed key at the decimals that
// are printed. There are none where it is the key, written in whatever way, or differs by
// less than rounding; nor in answers that are no number or have limits of their own.
func (e *Expected) Off(r Response) []Off { return e.Kind.off(e, r) }

func (common) off(*Expected, Response) []Off { return nil }

func (quantity) off(e *Expected, r Response) []Off {
	key := e.Key.X
	for _, x := range e.Alike {
		if math.Abs(r.X-x) < math.Abs(r.X-key) {
			key = x
		}
	}
	return offs(e, []float64{r.X}, []float64{key})
}

func (readings) off(e *Expected, r Response) []Off { return offs(e, r.Xs, e.Key.Xs) }

func offs(e *Expected, given, key []float64) []Off {
	places := e.Unit.Places
	if e.Unit.Count {
		places++ // as such a number is printed
	}
	var all []Off
	for i := range min(len(given), len(key)) {
		by := calc.Round(calc.Round(given[i]*e.Unit.Factor, places)-calc.Round(key[i]*e.Unit.Factor, places), places)
		if by == 0 {
			continue
		}
		all = append(all, Off{Number: i + 1, By: by, Text: e.Unit.Text(math.Abs(by) / e.Unit.Factor)})
	}
	return all
}
