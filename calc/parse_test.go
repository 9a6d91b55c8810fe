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
		"M16xL3-P1.5":                 "M16xPh3P1.5", // ASME B1.13M once
		"M16xL3-P1.5 (TWO STARTS)":    "M16xPh3P1.5",
		"M10-4g6g":                    "M10x1.5-4g6g",
		"1-1/4-8 UNS-2A (3 STARTS)":   "1-1/4-8 UNS-2A 3 STARTS",
		".375-24 UNF-3A 3-START":      "3/8-24 UNF-3A 3 STARTS",
		".750-.0625P-.1875L UNF-2A":   "3/4-16 UNF-2A 3 STARTS",
		"3/4-.0625P-.125L":            "3/4-16 UNF 2 STARTS",
		".500-.0417P-.0833L UNS-2B":   "1/2-24 UNS-2B 2 STARTS", // drawings round to four places
		"2-.2222P-.4444L UNC-2A-LH":   "2-4.5 UNC-2A-LH 2 STARTS",
		"M12-6g":                      "M12x1.75-6g", // ISO 965-1: without a pitch, the coarse one
		"M12-6H-LH":                   "M12x1.75-6H-LH",
		"M24xPh3P1.5-6g":              "M24xPh3P1.5-6g", // ISO 965-1, several starts
		"M24x Ph3P1.5":                "M24xPh3P1.5",
		"m24 x ph 3 p 1.5 - 6g - LH":  "M24xPh3P1.5-6g-LH",
		"M16×Ph3P1.5-6H (TWO STARTS)": "M16xPh3P1.5-6H",
		"m16xl3-p1.5-6g":              "M16xPh3P1.5-6g", // the class keeps its small letter
		"M1":                          "M1x0.25",
		"M20x2-7g6g":                  "M20x2-7g6g",
		"M20x2-4H5H":                  "M20x2-4H5H",
	}
	for text, want := range good {
		d, err := calc.ParseDesignation(text)
		if err != nil || d.String() != want {
			t.Errorf("ParseDesignation(%q) = %s, %v; want %s", text, d, err, want)
		}
	}
	bad := map[string]string{
		"1/2-12 UNC":                         "the coarse series is 13 here; write UN or UNS",
		"11/16-12 UNC":                       "the coarse series has no size 11/16; write UN or UNS",
		"1/2-13 UN":                          "UN is 4, 6, 8, 12, 16, 20, 28 or 32 threads per inch; write UNS",
		"M21":                                "the coarse series has no M21; write the pitch, such as M21x1",
		"M12x1.75-2A":                        "class 2A: give 4g6g, 6g, 6h, 6H or 6G",
		"3/4-.0625P-.15L UNS-2A":             "a lead of .15 in is not a whole number of pitches of .0625 in",
		"3/4-.0625P-.125L UNS-2A (3 STARTS)": "3 starts and a lead of .125 in contradict each other",
		"2.875-0.4P-0.8L-ACME-2G":            "the lesson acme-threads why",
		"1-5 ACME-2G (2 STARTS)":             "an angle of 29 degrees",
		"M12x1.75-9g":                        "class 9g: give 4g6g, 6g, 6h, 6H or 6G", // the major diameter has grades 4, 6 and 8
		"M12x1.75-6g6":                       "not a thread",
		"M1x0.15":                            "pitch 0.15 mm: give 0.2 mm to 25.4 mm",
		"M1x1":                               "nominal diameter 1 mm: give 1.25 mm to 304.8 mm",
		"M24xPh4P1.5":                        "a lead of 4 mm is not a whole number of pitches of 1.5 mm",
		"":                                   "not a thread",
		"half inch":                          "not a thread",
		"#00-21":                             "without a zero before it",
		"00-90 UNS":                          "without a zero before it",
		"#01-64":                             "without a zero before it",
		"1/0-13":                             "below the line",
		"1/4-2":                              "nominal diameter 0.2500 in: give 0.6250 in to 12.0000 in",
	}
	for text, want := range bad {
		_, err := calc.ParseDesignation(text)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("ParseDesignation(%q): %v, want %q in it", text, err, want)
		}
	}
	for size, pitch := range map[string]string{ // ISO 261 and DIN 13-1, coarse
		"1": "0.25", "1.2": "0.25", "1.4": "0.3", "1.6": "0.35", "1.8": "0.35", "2": "0.4", "2.2": "0.45", "2.5": "0.45", "3": "0.5", "3.5": "0.6",
		"4": "0.7", "4.5": "0.75", "5": "0.8", "6": "1", "7": "1", "8": "1.25", "9": "1.25", "10": "1.5", "11": "1.5", "12": "1.75", "14": "2", "16": "2",
		"18": "2.5", "20": "2.5", "22": "2.5", "24": "3", "27": "3", "30": "3.5", "33": "3.5", "36": "4", "39": "4", "42": "4.5", "45": "4.5", "48": "5",
		"52": "5", "56": "5.5", "60": "5.5", "64": "6", "68": "6",
	} {
		if d, err := calc.ParseDesignation("M" + size + "-6g"); err != nil || d.String() != "M"+size+"x"+pitch+"-6g" {
			t.Errorf("M%s-6g: %s, %v", size, d, err)
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
	for _, s := range []string{"1/2-13 UNC-2A-LH", "M16xL3-P1.5", ".0556in", "29°30'", "1½", "0,0556", "#10-32", "\x1b[2J", "1-3/4-5 UNC 2 STARTS", "M24xPh3P1.5-6g", ".750-.0625P-.1875L UNS-2A"} {
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
