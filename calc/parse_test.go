package calc_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scratchpass/calc"
)

func TestParseNumber(t *testing.T) {
	good := map[string]float64{
		"0.0556": 0.0556, ".0556": 0.0556, "0,0556": 0.0556, ",055": 0.055, "0,125": 0.125, "1,5": 1.5, "5.": 5,
		"3/64": 3.0 / 64, "29 1/2": 29.5, "1-3/4": 1.75, "1½": 1.5, "−0.002": -0.002, " 12 ": 12, "+3": 3, "29 1 / 2": 29.5,
	}
	for text, want := range good {
		if got, err := calc.ParseNumber(text); err != nil || !calc.Within(got, want, 1e-15) {
			t.Errorf("ParseNumber(%q) = %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", " ", "five", "NaN", "Inf", "1e5", "0x10", "1_000", "1,500", "1.2.3", "--2", "3/0", ".", "-", "0.05 0.06", "\x1b[31m5"} {
		if got, err := calc.ParseNumber(text); err == nil {
			t.Errorf("ParseNumber(%q) = %v, want an error", text, got)
		}
	}
}

func TestLengthOf(t *testing.T) {
	good := map[string]float64{
		"0.0556": 0.0556, ".0556in": 0.0556, `.0556"`: 0.0556, "55.6 thou": 0.0556, "1.27 mm": 0.05, "1.27mm.": 0.05,
		"3/64 in": 3.0 / 64, "0,0556 in": 0.0556, "2 inches": 2,
	}
	for text, want := range good {
		if got, err := calc.LengthOf(text, calc.UnitInch); err != nil || !calc.Within(got.Inches(), want, 1e-12) {
			t.Errorf("LengthOf(%q) = %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "five", "in", "0.05 cm", "0.05 furlongs", "mm 5"} {
		if got, err := calc.LengthOf(text, calc.UnitInch); err == nil {
			t.Errorf("LengthOf(%q) = %v, want an error", text, got)
		}
	}
}

func TestParseAngle(t *testing.T) {
	for _, text := range []string{"29.5", "29 1/2", "29°30'", "29.5 deg", "29.5°", "29 deg 30 min", "29° 30", "29,5"} {
		if got, err := calc.ParseAngle(text); err != nil || got != 29.5 {
			t.Errorf("ParseAngle(%q) = %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "29 rad", "29°75'", "abc", "°"} {
		if got, err := calc.ParseAngle(text); err == nil {
			t.Errorf("ParseAngle(%q) = %v, want an error", text, got)
		}
	}
}

func TestParseDesignation(t *testing.T) {
	good := map[string]string{
		"1/2-13":                      "1/2-13 UNC",
		"1/2-13 UNC-2A":               "1/2-13 UNC-2A",
		"1/2 - 13 unc - 2a - lh":      "1/2-13 UNC-2A-LH",
		".500-13 UNC-2A":              "1/2-13 UNC-2A",
		"1-1/8-7 UNC-2B":              "1-1/8-7 UNC-2B",
		"1 1/8-7":                     "1-1/8-7 UNC",
		"#10-32 UNF-2A":               "10-32 UNF-2A",
		"#4-20":                       "#4-20 UNS", // 4-20 is four inches
		"#0-21":                       "0-21 UNS",
		"10-24":                       "10-24 UNC",
		"1-8":                         "1-8 UNC",
		"1-64":                        "1-64 UNC",
		"2-4 1/2 UNC":                 "2-4.5 UNC",
		"2-4.5":                       "2-4.5 UNC",
		"6-12 UN-3B":                  "6-12 UN-3B",
		"15/16-12 UN-2A":              "15/16-12 UN-2A",
		"7/16-24":                     "7/16-24 UNS",
		"3/4-16 UNF-2A 2 STARTS":      "3/4-16 UNF-2A 2 STARTS",
		"3/4-16 UNF-2A-LH (2 STARTS)": "3/4-16 UNF-2A-LH 2 STARTS",
		"M12x1.75-6g":                 "M12x1.75-6g",
		"m12 x 1.75 - 6H":             "M12x1.75-6H",
		"M20":                         "M20x2.5",
		"M8X1-LH":                     "M8x1-LH",
		"M16xL3-P1.5":                 "M16xL3-P1.5",
		"M16xL3-P1.5 (TWO STARTS)":    "M16xL3-P1.5",
		"M10-4g6g":                    "M10x1.5-4g6g",
	}
	for text, want := range good {
		d, err := calc.ParseDesignation(text)
		if err != nil || d.String() != want {
			t.Errorf("ParseDesignation(%q) = %s, %v; want %s", text, d, err, want)
		}
	}
	bad := map[string]string{
		"1/2-12 UNC":   "the coarse series is 13 here; write UN or UNS",
		"11/16-12 UNC": "the coarse series has no size 11/16; write UN or UNS",
		"1/2-13 UN":    "UN is 4, 6, 8, 12, 16, 20, 28 or 32 threads per inch; write UNS",
		"M21":          "the coarse series has no M21; write the pitch, such as M21x1",
		"M12x1.75-2A":  "class 2A: give 4g6g, 6g, 6h, 6H or 6G",
		"":             "not a thread",
		"half inch":    "not a thread",
		"#00-21":       "without a zero before it",
		"00-90 UNS":    "without a zero before it",
		"#01-64":       "without a zero before it",
		"1/0-13":       "below the line",
		"1/4-2":        "nominal diameter 0.2500 in: give 0.6250 in to 12.0000 in",
	}
	for text, want := range bad {
		_, err := calc.ParseDesignation(text)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("ParseDesignation(%q): %v, want %q in it", text, err, want)
		}
	}
	for _, size := range calc.UnifiedSizes() {
		for series, n := range size.TPI {
			text := fmt.Sprintf("%s-%s %s-2A", size.Size, calc.Shortest(n.Number(), 2), series)
			d, err := calc.ParseDesignation(text)
			if err != nil || d.String() != text || d.Nominal != size.Nominal {
				t.Errorf("%s: %s, %v", text, d, err)
			}
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"1/2-13 UNC-2A-LH", "M16xL3-P1.5", ".0556in", "29°30'", "1½", "0,0556", "#10-32", "\x1b[2J", "1-3/4-5 UNC 2 STARTS"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if x, err := calc.ParseNumber(s); err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
			t.Errorf("ParseNumber(%q) = %v", s, x)
		}
		if x, err := calc.LengthOf(s, calc.UnitInch); err == nil && math.IsNaN(x.Inches()) {
			t.Errorf("LengthOf(%q) = %v", s, x)
		}
		if a, err := calc.ParseAngle(s); err == nil && math.IsNaN(a.Degrees()) {
			t.Errorf("ParseAngle(%q) = %v", s, a)
		}
		d, err := calc.ParseDesignation(s)
		if err != nil {
			return
		}
		again, err := calc.ParseDesignation(d.String())
		if err != nil || again.String() != d.String() || !calc.Within(again.Nominal.Inches(), d.Nominal.Inches(), 1e-4) {
			t.Errorf("%q prints %q, which reads %q, %v", s, d, again, err)
		}
	})
}
