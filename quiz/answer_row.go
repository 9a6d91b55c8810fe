package quiz

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"scratchpass/calc"
)

// row is several numbers in order: readings to write down one after the other.
type row struct{}

var _ Kind = row{}

func (row) Name() string { return "readings" }

func (row) Read(a *Answer, text string) (Reply, error) {
	want := strconv.Itoa(len(a.Key.Xs)) + " numbers with a space between them, such as " +
		strings.TrimSuffix(strings.Repeat(a.Unit.Fixed(0.003)+" ", len(a.Key.Xs)), " ")
	parted := strings.ReplaceAll(between().ReplaceAllString(text, ";"), ", ", "; ")
	items := strings.FieldsFunc(parted, func(r rune) bool { return r == ';' }) // each may have its unit
	if len(items) != len(a.Key.Xs) {
		items = strings.FieldsFunc(parted, func(r rune) bool { return r == ' ' || r == ';' })
	}
	if u := a.Unit.Name; len(items) == len(a.Key.Xs)+1 && items[len(items)-1] == u {
		items = items[:len(items)-1] // one unit behind them all
	}
	if len(items) == 1 && len(a.Key.Xs) > 1 { // "0.003,0.004"
		items = strings.Split(text, ",")
	}
	if len(items) != len(a.Key.Xs) || len(text) > 200 {
		return Reply{}, unread(text, want)
	}
	unit, some := "", false // the one unit that is written, and whether a number has none
	for _, item := range items {
		switch u := unitBehind(item); {
		case u == "":
			some = true
		case unit != "" && u != unit:
			return Reply{}, unread(text, want)
		default:
			unit = u
		}
	}
	xs := make([]float64, len(items))
	for i, item := range items {
		if unit != "" && unitBehind(item) == "" {
			item += " " + unit // 5 then 6 thou
		}
		r, err := readQuantity(a.Unit, strings.Trim(item, ", "))
		if err != nil {
			return Reply{}, unread(text, want)
		}
		xs[i] = r.X
	}
	if unit != "" && some && !ofOneSize(xs) { // 0.005 then 6 thou: the unit was not meant for both
		return Reply{}, unread(text, want)
	}
	return Reply{Xs: xs, Unit: unit}, nil
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

// rowInOtherUnit reports whether all numbers of a row would be right in another unit.
func (a *Answer) rowInOtherUnit(r Reply) bool {
	if _, ok := a.Kind.(row); !ok || len(r.Xs) != len(a.Key.Xs) || r.Unit != "" {
		return false
	}
	return slices.ContainsFunc(otherUnits(a.Unit), func(factor float64) bool {
		shown := make([]float64, len(r.Xs))
		for i, x := range r.Xs {
			shown[i] = x / factor
		}
		return a.Kind.Same(a, Reply{Xs: shown}, a.Key, a.Tol)
	})
}

// unitBehind is the unit that stands behind a number, "" where none does.
func unitBehind(item string) string {
	return strings.ToLower(strings.TrimSpace(strings.TrimLeft(item, " ,.-+0123456789/\u2212")))
}

func (row) Same(_ *Answer, x, y Reply, tol float64) bool {
	if len(x.Xs) != len(y.Xs) {
		return false
	}
	for i := range x.Xs {
		if !calc.Within(x.Xs[i], y.Xs[i], tol) {
			return false
		}
	}
	return true
}

func (row) Show(a *Answer, r Reply) string {
	parts := make([]string, len(r.Xs))
	for i, x := range r.Xs {
		parts[i] = a.Unit.Fixed(x)
	}
	return a.Unit.WithName(strings.Join(parts, " then "))
}
