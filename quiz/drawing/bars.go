package drawing

import (
	"math"
	"strings"

	"scratchpass/calc"
)

// Bar is one value with its name, and from where to where the true value may well lie.
// Low below High draws that.
type Bar struct {
	Label            string
	Value, Low, High float64
}

// Measures of a chart of bars. It is as wide as the narrowest terminal that must show
// it: at that width one unit is one dot, so that each name and each bar has a row of
// characters of its own, and no name lies on a line.
const (
	barColumns = 36
	barWide    = 2*barColumns - 1
	barStep    = 8   // from bar to bar: two rows of characters
	barRow     = 4   // one row of characters
	barText    = 1.7 // below the top of its row: the middle of a name
	barTop     = 4   // below the top of its row: the upper edge of a bar
	barHigh    = 2
)

// Bars draws values as horizontal bars from 0 to most, each below its name and its
// number. A chart with more than a dozen is long: give the rest to another one.
func Bars(title, twin string, bars []Bar, most float64, unit string) Drawing {
	rows := float64(barStep*len(bars) + barStep)
	for _, b := range bars {
		rows += barRow * float64(len(named(b.Label))-1)
	}
	d := Drawing{Title: title, Twin: twin, Width: barWide, Height: rows, Most: barColumns}
	places := 0
	for _, b := range bars {
		if b.Value != math.Trunc(b.Value) {
			places = 1
		}
	}
	shown := func(number string) string {
		if unit == "" {
			return number
		}
		return number + " " + unit
	}
	// along is how far right a value lies. One outside the chart ends at its edge.
	along := func(x float64) float64 {
		if share := x / most; x > 0 && share > 0 {
			return min(share, 1) * barWide
		}
		return 0
	}
	y := rows
	for _, b := range bars {
		value := shown(calc.Fixed(b.Value, places))
		name := named(b.Label)
		for _, line := range name[:len(name)-1] { // a long name begins in a row of its own
			d.labelFrom(0, y-barText, line)
			y -= barRow
		}
		d.labelFrom(0, y-barText, shortened(name[len(name)-1], barColumns-1-letters(value)))
		d.labelTo(barWide, y-barText, value)
		end, top, bottom := along(b.Value), y-barTop, y-barTop-barHigh
		d.area(Outline, Open, Work, Point{0, top}, Point{end, top}, Point{end, bottom}, Point{0, bottom})
		if b.Low < b.High {
			low, high, middle := along(b.Low), along(b.High), (top+bottom)/2
			d.draw(Thin, Measure, Point{low, middle}, Point{high, middle})
		}
		y -= barStep
	}
	// The scale, with a mark at its middle too.
	d.draw(Thin, Measure, Point{0, y - 1}, Point{barWide, y - 1})
	for _, x := range []float64{0, barWide / 2.0, barWide} {
		d.draw(Thin, Measure, Point{x, y - 1}, Point{x, y - 3})
	}
	d.labelFrom(0, y-barTop-barText, "0")
	d.labelTo(barWide, y-barTop-barText, shown(calc.Shortest(most, 1)))
	return d
}

// barName is how many letters of a name have room beside the longest number.
const barName = barColumns - 8

// named is a name in one line, or in two where it is long.
func named(label string) []string {
	if letters(label) <= barName {
		return []string{label}
	}
	at := strings.LastIndex(string([]rune(label)[:barName+1]), " ")
	if at < 1 {
		return []string{label}
	}
	return []string{label[:at], label[at+1:]}
}

// shortened cuts a text to so many letters. The twin has it in full.
func shortened(text string, most int) string {
	letters := []rune(text)
	if len(letters) <= most {
		return text
	}
	return string(letters[:max(most-1, 0)]) + "…"
}
