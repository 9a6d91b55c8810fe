package answer

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"scratchpass/calc"
)

// Readings is several numbers in order: readings to write down one after the other.
var Readings Kind = readings{}

type readings struct{ common }

func (readings) Name() string           { return "readings" }
func (readings) Accept(v Visitor) error { return v.Readings() }
func (readings) Numeric() bool          { return true }

func (readings) Read(e *Expected, text string) (Response, error) {
	refuse := func() (Response, error) {
		example := strings.TrimSuffix(strings.Repeat(e.Unit.Fixed(0.003)+" ", len(e.Key.Xs)), " ")
		return Response{}, unread(text, "want-readings", "n", strconv.Itoa(len(e.Key.Xs)), "example", example)
	}
	parted := strings.ReplaceAll(between().ReplaceAllString(text, ";"), ", ", "; ")
	items := strings.FieldsFunc(parted, func(r rune) bool { return r == ';' }) // each may have its unit
	if len(items) != len(e.Key.Xs) {
		items = strings.FieldsFunc(parted, func(r rune) bool { return r == ' ' || r == ';' })
	}
	if u := e.Unit.Name; len(items) == len(e.Key.Xs)+1 && items[len(items)-1] == u {
		items = items[:len(items)-1] // one unit behind them all
	}
	if len(items) == 1 && len(e.Key.Xs) > 1 { // "0.003,0.004"
		items = strings.Split(text, ",")
	}
	if len(items) != len(e.Key.Xs) || len(text) > longest {
		return refuse()
	}
	unit, some := "", false // the one unit that is written, and whether a number has none
	for _, item := range items {
		switch u := unitBehind(item); {
		case u == "":
			some = true
		case unit != "" && u != unit:
			return refuse()
		default:
			unit = u
		}
	}
	xs, asked := make([]float64, len(items)), true // whether the unit that is written is the one asked for
	for i, item := range items {
		if unit != "" && unitBehind(item) == "" {
			item += " " + unit // 5 then 6 thou
		}
		r, err := readNumber(e.Unit, strings.Trim(item, ", "))
		if err != nil {
			return refuse()
		}
		xs[i] = r.X
		asked = asked && (r.Unit == "" || r.Unit == e.Unit.Name)
	}
	if !asked && some && !ofOneSize(xs) { // 0.005 then 6 thou: the unit was not meant for both
		return refuse()
	}
	return Response{Xs: xs, Unit: unit}, nil
}

// between is a word between two readings.
var between = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\s*(?:\b(?:then|and)\b|&)\s*`) })

// ofOneSize reports whether numbers are so near to one another that one unit was meant
// for all.
func ofOneSize(xs []float64) bool {
	least, most := math.Inf(1), 0.0
	for _, x := range xs {
		if x = math.Abs(x); x > 0 {
			least, most = min(least, x), max(most, x)
		}
	}
	return most <= least*100
}

// unitBehind is the unit that stands behind a number, "" where none does.
func unitBehind(item string) string {
	return strings.ToLower(strings.TrimSpace(strings.TrimLeft(item, " ,.-+0123456789/\u2212")))
}

func (readings) Same(_ *Expected, x, y Response, tolerance float64) bool {
	return slices.EqualFunc(x.Xs, y.Xs, func(a, b float64) bool { return calc.Within(a, b, tolerance) })
}

func (readings) Print(e *Expected, r Response) []string {
	parts := make([]string, len(r.Xs))
	for i, x := range r.Xs {
		parts[i] = e.Unit.Fixed(x)
	}
	return parts
}

func (k readings) Figures(e *Expected) []string { return k.Print(e, e.Key) }

func (readings) Typed(e *Expected, r Response) Response {
	r.Xs = slices.Clone(r.Xs)
	for i, x := range r.Xs {
		r.Xs[i] = e.typed(x)
	}
	return r
}

func (readings) Settle(e *Expected, t Tolerance) bool { return settleNumbers(e, t) }
