package answer

import (
	"math"
	"slices"
)

// lastPlace is one unit of the last printed place, in held units.
func (e *Expected) lastPlace() float64 { return math.Pow10(-e.Unit.Places) / e.Unit.Factor }

// nearBands adds what is right and yet shows another way: just the number that it gives,
// as it is printed. They stand before all other bands.
func (e *Expected) nearBands(all []band) []band {
	for i := range e.Errors {
		if known := &e.Errors[i]; known.Near {
			b := e.errorBand(known)
			b.low, b.high = known.Response.X-e.lastPlace()/2, known.Response.X+e.lastPlace()/2
			all = append(all, b)
		}
	}
	return all
}

// dropBlurred leaves out the near ways whose printed number could be that of the key or
// lies among the numbers of an error: nothing can be told from it.
func (e *Expected) dropBlurred() {
	if !slices.ContainsFunc(e.Errors, func(k Known) bool { return k.Near }) {
		return
	}
	kept := make([]Known, 0, len(e.Errors))
	for i := range e.Errors {
		if known := &e.Errors[i]; !known.Near || !e.blurred(known) {
			kept = append(kept, *known)
		}
	}
	e.Errors = kept
}

func (e *Expected) blurred(known *Known) bool {
	one := e.lastPlace() * (1 - 1e-6) // a binary difference may fall short by a hair
	if math.Abs(known.Response.X-e.Key.X) < one {
		return true
	}
	for i := range e.Errors {
		other := &e.Errors[i]
		if other.Name == known.Name {
			continue
		}
		apart := e.ErrorTolerance + 0.6*one
		if other.Near {
			apart = one
		}
		if math.Abs(known.Response.X-other.Response.X) < apart {
			return true
		}
	}
	return false
}
