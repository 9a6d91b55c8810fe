package answer

import (
	"math"

	"scratchpass/calc"
)

// Quantity is one number with a unit.
var Quantity Kind = quantity{}

type quantity struct{ common }

func (quantity) Name() string           { return "quantity" }
func (quantity) Accept(v Visitor) error { return v.Number() }
func (quantity) Numeric() bool          { return true }
func (quantity) OneNumber() bool        { return true }
func (quantity) Takeable() bool         { return true }

func (quantity) Read(e *Expected, text string) (Response, error) { return readNumber(e.Unit, text) }

func (quantity) Same(_ *Expected, x, y Response, tolerance float64) bool {
	return calc.Within(x.X, y.X, tolerance)
}

func (quantity) Print(e *Expected, r Response) []string { return []string{e.Unit.Fixed(r.X)} }

func (k quantity) printGiven(e *Expected, r Response) []string {
	shown := r.X * e.Unit.Factor
	if !calc.Within(calc.Round(shown, e.Unit.Places), shown, 1e-9) {
		return []string{e.Unit.Exact(r.X)}
	}
	return k.Print(e, r)
}

func (k quantity) Figures(e *Expected) []string { return k.Print(e, e.Key) }

func (quantity) Typed(e *Expected, r Response) Response {
	r.X = e.typed(r.X)
	return r
}

func (quantity) Settle(e *Expected, t Tolerance) bool { return settleNumbers(e, t) }

func (k quantity) right(e *Expected, r Response) bool {
	if e.UpperLimit && r.X > e.Key.X*(1+1e-9) {
		return false
	}
	return k.Same(e, r, e.Key, e.Tolerance)
}

func (quantity) bounds(e *Expected) (low, high float64, ok bool) {
	if e.UpperLimit {
		return e.Key.X - e.Tolerance, e.Key.X, true
	}
	return e.Key.X - e.Tolerance, e.Key.X + e.Tolerance, true
}

// Accepts is rounded inwards: whoever writes so many places is right up to there.
func (k quantity) Accepts(e *Expected) string {
	if e.Unit.Count {
		return ""
	}
	scale := math.Pow10(e.Unit.Places)
	least, most, _ := k.bounds(e)
	low := math.Ceil(least*e.Unit.Factor*scale-1e-6) / scale
	high := math.Floor(most*e.Unit.Factor*scale+1e-6) / scale
	if low >= high {
		return ""
	}
	return calc.Fixed(low, e.Unit.Places) + " to " + e.Unit.Text(high/e.Unit.Factor)
}

// Others are the numbers that a lost factor would give.
func (quantity) Others(e *Expected) []Response {
	var all []Response
	for _, times := range []float64{0.5, 2, 1.5, 3} {
		shown := e.Key.X * times * e.Unit.Factor
		if counted := e.Unit.Count || e.Unit.Places == 0; !counted || calc.Within(shown, math.Round(shown), 1e-9) {
			all = append(all, NumberResponse(e.Key.X*times))
		}
	}
	return all
}

func (quantity) mark(e *Expected, r Response) Mark {
	var room [usualBands]band
	return markNumber(quantityBands(e, r, room[:0]), r)
}

func (quantity) bands(e *Expected, r Response) []band { return quantityBands(e, r, nil) }
