package drawing_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"scratchpass/quiz/drawing"
)

// twelve are as many bars as a chart should have, some with names as long as they may be.
var twelve = []drawing.Bar{
	{Label: "Compound travel for flat", Value: 75, Low: 48, High: 91},
	{Label: "Stop before gauging", Value: 100, Low: 76, High: 100},
	{Label: "Dial after passes", Value: 0, Low: 0, High: 24},
	{Label: "Thread dial: which line?", Value: 8, Low: 1, High: 35},
	{Label: "Change gears, compound", Value: 33, Low: 14, High: 61},
	{Label: "Pitch", Value: 50, Low: 25, High: 75},
	{Label: "Half-nuts", Value: 92, Low: 65, High: 99},
	{Label: "⌀ over wires, 1/2-13 UNC", Value: 17, Low: 5, High: 45},
	{Label: "Spring pass", Value: 58, Low: 32, High: 81},
	{Label: "W", Value: 67, Low: 39, High: 86},
	{Label: "Boring bar: lag of a cut", Value: 42, Low: 19, High: 68},
	{Label: "Minor ⌀ before threading", Value: 25},
}

func isDots(r rune) bool { return r >= 0x2800 && r <= 0x28FF }

// Each name and its number have a line of their own, whole, and the bar the line below.
func TestBarsOnATerminal(t *testing.T) {
	for _, unit := range []string{"%", "answers", ""} {
		d := drawing.Bars("Right", "The share of right answers.", twelve, 100, unit)
		for _, columns := range []int{36, 64, 200} {
			lines := d.Terminal(columns)
			t.Logf("at %d\n%s", columns, strings.Join(lines, "\n"))
			if len(lines) != 2*len(twelve)+2 {
				t.Fatalf("at %d columns: %d lines", columns, len(lines))
			}
			for i, b := range twelve {
				name, bar := lines[2*i], lines[2*i+1]
				value := strings.TrimSpace(fmt.Sprint(b.Value, " ", unit))
				if want := b.Label + strings.Repeat(" ", 36-utf8.RuneCountInString(b.Label+value)) + value; name != want {
					t.Errorf("at %d columns: %q, want %q", columns, name, want)
				}
				long := utf8.RuneCountInString(bar)
				if want := int(math.Round(max(b.Value, b.High)/100*71))/2 + 1; min(want, 36) != long || strings.ContainsFunc(bar, func(r rune) bool { return !isDots(r) }) {
					t.Errorf("at %d columns: the bar of %q has %d characters, want %d: %q", columns, b.Label, long, want, bar)
				}
			}
			if scale := lines[len(lines)-1]; !strings.HasPrefix(scale, "0 ") || !strings.HasSuffix(scale, strings.TrimSpace("100 "+unit)) {
				t.Errorf("at %d columns: the scale is %q", columns, scale)
			}
		}
	}
}

// A long name stands in two rows, whole.
func TestLongNamesOfBars(t *testing.T) {
	bars := []drawing.Bar{{Label: "How far to move the tailstock (own)", Value: 50, Low: 20, High: 80}, {Label: "Pitch", Value: 100}}
	lines := drawing.Bars("Right", "told", bars, 100, "%").Terminal(64)
	t.Log(strings.Join(lines, "\n"))
	if len(lines) != 7 || lines[0] != "How far to move the" || !strings.HasPrefix(lines[1], "tailstock (own) ") || !strings.HasSuffix(lines[1], " 50 %") || !strings.HasPrefix(lines[3], "Pitch ") {
		t.Errorf("%q", lines)
	}
}

// On a page a name stands on white: that reaches over no line of the chart.
func TestBarsLeaveRoomForNames(t *testing.T) {
	d := drawing.Bars("Right", "told", twelve, 100, "%")
	half := d.Width / float64(d.Columns()) / 0.62 * 0.6 // of the height of the type's white
	for _, label := range d.Labels {
		for _, line := range d.Shapes {
			for _, p := range line.Points {
				if math.Abs(p.Y-label.At.Y) < half {
					t.Errorf("a line at %g runs into %q at %g", p.Y, label.Text, label.At.Y)
				}
				if p.X < 0 || p.X > d.Width || p.Y < 0 || p.Y > d.Height {
					t.Errorf("a line goes to %v, outside", p)
				}
			}
		}
	}
	if count := elements(t, d.SVG()); count["text"] != 2*len(twelve)+2 {
		t.Errorf("the chart has %v", count)
	}
	if again := drawing.Bars("Right", "told", twelve, 100, "%"); again.SVG() != d.SVG() {
		t.Error("drawn twice it differs")
	}
}

func TestNumbersOfBars(t *testing.T) {
	texts := func(bars []drawing.Bar, most float64, unit string) string {
		var all []string
		for _, l := range drawing.Bars("", "", bars, most, unit).Labels {
			all = append(all, l.Text)
		}
		return strings.Join(all, "|")
	}
	for got, want := range map[string]string{
		texts([]drawing.Bar{{Label: "a", Value: 2}, {Label: "b", Value: 10}}, 10, ""):      "a|2|b|10|0|10",
		texts([]drawing.Bar{{Label: "a", Value: 2}, {Label: "b", Value: 62.55}}, 100, "%"): "a|2.0 %|b|62.6 %|0|100 %",
		texts([]drawing.Bar{{Label: strings.Repeat("long ", 9), Value: 120}}, 100, "%"):    "long long long long long|long long long long |120 %|0|100 %",
		texts([]drawing.Bar{{Label: "a", Value: 1}}, 1, strings.Repeat("u", 50)):           "…|1 " + strings.Repeat("u", 50) + "|0|1 " + strings.Repeat("u", 50),
		texts(nil, 5, "h"):  "0|5 h",
		texts(nil, 2.5, ""): "0|2.5",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Values that can't be drawn still leave a picture.
func TestOddBars(t *testing.T) {
	odd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -5, 0, 1e300}
	var bars []drawing.Bar
	for _, x := range odd {
		bars = append(bars, drawing.Bar{Label: "odd", Value: x, Low: x, High: 3}, drawing.Bar{Label: "odd", Value: 1, Low: 0, High: x})
	}
	for _, most := range append(odd, 10) {
		d := drawing.Bars("", "", bars, most, "")
		for _, line := range d.Shapes {
			for _, p := range line.Points {
				if !(p.X >= 0 && p.X <= d.Width && p.Y >= 0 && p.Y <= d.Height) {
					t.Errorf("up to %g: a line goes to %v", most, p)
				}
			}
		}
		for columns := range 70 {
			d.Terminal(columns)
		}
	}
}
