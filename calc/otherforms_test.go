package calc_test

import (
	"strconv"
	"strings"
	"testing"

	"scratchpass/calc"
)

// Published values of Whitworth threads and of plating, at the decimals printed. Each row
// has something to compare.
func TestOtherFormsAgainstPublishedRows(t *testing.T) {
	for _, row := range publishedRows(t, "other-forms.csv") {
		compared := false
		switch row["topic"] {
		case "whitworth":
			i := strings.LastIndex(row["thread"], "-")
			size, n := row["thread"][:i], must[float64](t)(calc.ParseNumber(row["thread"][i+1:]))
			nominal := must[calc.Length](t)(calc.ParseFraction(size))
			h := must[calc.Length](t)(calc.WhitworthDepth.Of(calc.Inches(1 / n)))
			compared = compare(t, row["thread"]+" depth", row["depth"], h.Inches())
			compared = compare(t, row["thread"]+" pitch diameter", row["pitch_diameter"], (nominal-h).Inches()) || compared
			compared = compare(t, row["thread"]+" minor diameter", row["minor"], (nominal-h.Times(2)).Inches()) || compared
		case "plating":
			thickest, err := strconv.ParseFloat(row["thickest"], 64)
			if err != nil {
				t.Fatal(err)
			}
			growth := must[calc.Length](t)(calc.PitchDiameterGrowth(calc.Inches(thickest)))
			compared = compare(t, row["thread"]+" plating", row["allowance"], growth.Inches())
		}
		if !compared {
			t.Errorf("nothing is compared with the row %v", row)
		}
	}
}

// Vermont Gage, Pre-Plate Threads, 2024: 2 x csc 30 = 4, so that .0003 of plating adds .0012.
func TestPlatingMovesThePitchLine(t *testing.T) {
	for _, c := range []struct{ after, thick, outside, inside float64 }{{0.5, 0.0003, 0.4988, 0.5012}, {0.45, 0.0005, 0.448, 0.452}} {
		out := must[calc.Length](t)(calc.BeforePlating.Of(calc.Inches(c.after), calc.Inches(c.thick))).Inches()
		in := must[calc.Length](t)(calc.BeforePlatingInside.Of(calc.Inches(c.after), calc.Inches(c.thick))).Inches()
		if !calc.Within(out, c.outside, 1e-9) || !calc.Within(in, c.inside, 1e-9) {
			t.Errorf("%v under %v: %v outside and %v inside, want %v and %v", c.after, c.thick, out, in, c.outside, c.inside)
		}
	}
	for _, bad := range []calc.Length{-calc.Thou, 6 * calc.Thou} {
		if _, err := calc.BeforePlating.Of(0.5, bad); err == nil {
			t.Errorf("plating of %v is taken", bad)
		}
	}
}

// Machinery's Handbook 27th ed. p. 1792: M12x1.75 over 6 to 18 mm, M20x2.5 over 10 to 30, M30x3.5 over 15 to 45.
func TestNormalEngagement(t *testing.T) {
	for _, c := range []struct{ d, p, short, long float64 }{{12, 1.75, 6, 18}, {20, 2.5, 10, 30}, {30, 3.5, 15, 45}, {10, 1.5, 5, 15}, {45, 4.5, 21, 63}} {
		short, long, ok := calc.NormalEngagement(calc.Millimetres(c.d), calc.Millimetres(c.p))
		if !ok || !calc.Within(short.Millimetres(), c.short, 1e-9) || !calc.Within(long.Millimetres(), c.long, 1e-9) {
			t.Errorf("M%vx%v: over %v to %v (%v), want %v to %v", c.d, c.p, short, long, ok, c.short, c.long)
		}
	}
	if _, _, ok := calc.NormalEngagement(calc.Millimetres(5), calc.Millimetres(0.8)); ok {
		t.Error("the table at hand does not begin until 5.6 mm")
	}
}
