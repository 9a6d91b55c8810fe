package answer

import (
	"math"
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
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

// Settle refuses a limit that would be printed beyond itself.
func (quantity) Settle(e *Expected, t Tolerance) bool {
	printed := e.typed(e.Key.X)
	past := e.Safe == Below && printed > e.Key.X+1e-12 || e.Safe == Above && printed < e.Key.X-1e-12
	return settleNumbers(e, t) && !past
}

func (k quantity) right(e *Expected, r Response) bool {
	if slices.ContainsFunc(e.Alike, func(x float64) bool { return calc.Within(r.X, x, e.Tolerance) }) {
		return true
	}
	low, high, _ := k.bounds(e)
	return within(r.X, low, high)
}

func (quantity) bounds(e *Expected) (low, high float64, ok bool) {
	down, up := e.Tolerance+e.below, e.Tolerance+e.above
	if e.Safe != BothSides {
		down, up = max(down, e.Reach), max(up, e.Reach)
	}
	least, most := e.limits()
	return max(e.Key.X-down, least), min(e.Key.X+up, most), true
}

// limits are the least and the highest number that a limit allows, infinite where there
// is none. A limit is the key, or the printed key where that was rounded past it, and
// what rounding two places further on may leave.
func (e *Expected) limits() (least, most float64) {
	least, most = math.Inf(-1), math.Inf(1)
	slack := e.lastPlace() * 0.005
	switch e.Safe {
	case Below:
		most = max(e.Key.X, e.typed(e.Key.X)) + slack
	case Above:
		least = min(e.Key.X, e.typed(e.Key.X)) - slack
	}
	return least, most
}

// Accepts is rounded inwards: whoever writes so many places is right up to there.
func (k quantity) Accepts(e *Expected) string {
	if e.Unit.Count {
		return ""
	}
	least, most, _ := k.bounds(e)
	text := inwards(e.Unit, least, most)
	for _, x := range e.Alike {
		if more := inwards(e.Unit, x-e.Tolerance, x+e.Tolerance); text != "" && more != "" {
			text += ", " + more
		}
	}
	return text
}

// inwards prints a range rounded inwards, or nothing where none is left.
func inwards(u machine.Unit, least, most float64) string {
	scale := math.Pow10(u.Places)
	low := math.Ceil(least*u.Factor*scale-1e-6) / scale
	high := math.Floor(most*u.Factor*scale+1e-6) / scale
	if low >= high {
		return ""
	}
	return calc.Fixed(low, u.Places) + " to " + u.Text(high/u.Factor)
}

// Others are what a lost factor would give, or what is as much off as the errors.
func (quantity) Others(e *Expected) []Response { return plausible(e) }

func (quantity) mark(e *Expected, r Response) Mark {
	var room [usualBands]band
	return markNumber(quantityBands(e, r, room[:0]), r)
}

func (quantity) bands(e *Expected, r Response) []band { return quantityBands(e, r, nil) }
