package answer

import (
	"scratchpass/calc"
)

// Limits is a size to aim for: anything inside the limits is right.
var Limits Kind = limits{}

type limits struct{ common }

func (limits) Name() string           { return "limits" }
func (limits) Accept(v Visitor) error { return v.Limits() }
func (limits) Numeric() bool          { return true }
func (limits) OneNumber() bool        { return true }

func (limits) Read(e *Expected, text string) (Response, error) { return readNumber(e.Unit, text) }

func (limits) Same(_ *Expected, x, y Response, tolerance float64) bool {
	return calc.Within(x.X, y.X, tolerance)
}

func (limits) Print(e *Expected, r Response) []string { return []string{e.Unit.Fixed(r.X)} }

func (limits) Typed(e *Expected, r Response) Response {
	r.X = e.typed(r.X)
	return r
}

func (limits) Settle(e *Expected, t Tolerance) bool { return settleNumbers(e, t) }

func (limits) right(e *Expected, r Response) bool { return within(r.X, e.Low, e.High) }

func (limits) bounds(e *Expected) (low, high float64, ok bool) { return e.Low, e.High, true }

// Others are sizes beyond the limits, by as much as these are apart.
func (limits) Others(e *Expected) []Response {
	var all []Response
	for _, times := range []float64{0.5, 1, 1.5, 2, 3} {
		off := times * (e.High - e.Low)
		all = append(all, NumberResponse(e.Low-off), NumberResponse(e.High+off))
	}
	return all
}

func (limits) gap(e *Expected, r Response) float64 { return max(e.Low-r.X, r.X-e.High) }

func (limits) printKey(e *Expected) []string {
	return []string{e.Unit.Fixed(e.Low) + " to " + e.Unit.Fixed(e.High)}
}

func (limits) mark(e *Expected, r Response) Mark {
	var room [usualBands]band
	return markNumber(limitBands(e, room[:0]), r)
}

func (limits) bands(e *Expected, _ Response) []band { return limitBands(e, nil) }
