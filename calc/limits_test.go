package calc_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"scratchpass/calc"
)

// A class whose tolerance is wider than the flanks are is refused. By hand for 98 threads
// per inch on 6.5 in: Td2 = 0.0015 x (1.866 + 0.303 + 0.471) = 0.00396, so 1A has 0.00594
// where root and pitch line are 0.541266 / 98 = 0.00552 apart on the diameter, and 1B has
// 0.00772 where pitch line and crest are 0.649519 / 98 = 0.00663 apart.
func TestTolerancesWiderThanTheFlanks(t *testing.T) {
	for text, want := range map[string]string{
		"6.5-98 UNS-1A": `class 1A of "6-1/2-98 UNS-1A": give a finer class or a coarser thread`,
		"6.5-98 UNS-1B": `class 1B of "6-1/2-98 UNS-1B"`,
		"6.5-98 UNS-2A": "", "6.5-98 UNS-2B": "", "1-98 UNS-1A": "", "6.5-72 UNS-1A": "",
	} {
		d, err := calc.ParseDesignation(text)
		if err != nil {
			t.Fatal(err)
		}
		l, err := calc.LimitsOf(d)
		if want == "" && err != nil || want != "" && (err == nil || !strings.HasPrefix(err.Error(), want)) {
			t.Errorf("%s: %+v, %v, want %q", text, l, err, want)
		}
	}
}

// What ISO 965-1 does not give is an error that says what it does give.
func TestMetricLimitsThatAreNotGiven(t *testing.T) {
	for text, want := range map[string]string{
		"M1-6g":        "",
		"M180x3-6H":    "",
		"M1-6H":        `"M1x0.25-6H": for this size and pitch ISO 965-1 gives the pitch diameter the grades 4 and 5, not 6`,
		"M8x0.75-8g":   `"M8x0.75-8g": for this size and pitch ISO 965-1 gives the pitch diameter the grades 3, 4, 5, 6 and 7, not 8`,
		"M3-7h4h":      "",
		"M3x0.5-7h8h":  `"M3x0.5-7h8h": for this size and pitch ISO 965-1 gives the major diameter the grades 4 and 6, not 8`,
		"M48x1-6g":     `"M48x1-6g": over 45 up to 90 mm ISO 965-1 gives tolerances for pitches of 1.5, 2, 3, 4, 5, 5.5 and 6 mm, not of 1 mm`,
		"M21x0.9-6H":   "not of 0.9 mm",
		"M0.9x0.2-6g":  "for nominal diameters over 0.99 mm, up to 180 mm",
		"M180.1x3-6g":  "for nominal diameters over 0.99 mm, up to 180 mm",
		"M42xPh9P3-6g": "",
	} {
		d, err := calc.ParseDesignation(text)
		if err != nil {
			t.Error(err)
			continue
		}
		l, err := calc.LimitsOf(d)
		if want == "" && err != nil || want != "" && (err == nil || !strings.Contains(err.Error(), want) || l != (calc.Limits{})) {
			t.Errorf("%s: %+v, %v, want %q", text, l, err, want)
		}
	}
}

// The limits of several starts are those of one: they hold for the pitch, not the lead.
func TestLimitsOfSeveralStarts(t *testing.T) {
	for several, one := range map[string]string{"M24xPh6P2-6g": "M24x2-6g", "1-1/4-8 UN-2A (2 STARTS)": "1-1/4-8 UN-2A"} {
		a, err1 := calc.ParseDesignation(several)
		b, err2 := calc.ParseDesignation(one)
		la, err3 := calc.LimitsOf(a)
		lb, err4 := calc.LimitsOf(b)
		if err := errors.Join(err1, err2, err3, err4); err != nil || la != lb || a.Starts < 2 {
			t.Errorf("%s: %+v, %s: %+v (%v)", several, la, one, lb, err)
		}
	}
}

// FuzzLimits goes from the text of a designation to the limits of size. Whatever is
// typed, there is an error that quotes it, or limits that a part could have: the largest
// above the least, the pitch diameter between minor and major.
func FuzzLimits(f *testing.F) {
	for _, s := range []string{"1/2-13 UNC-2A", "1/2-13 UNC-2B", "3/4-10 UNC-3A", "3/4-10 UNC-3B", "0-80 UNF-1A", "10-24 UNC-1B", "5/8-11 UNC-2A", "1-3/4-5 UNC-2B",
		"15/16-12 UN-2A", "6-12 UN-3B", "12-4 UN-2B", "7/16-24 UNS-2A", "#4-20 UNS-2B", "1/4-20", "M12x1.75-6g", "M12-6H", "M10-4g6g", "M64-6G", "M3x0.5-6h",
		"M33xL6-P2-6g", "3/4-16 UNF-2A-LH 2 STARTS", "11.9-98 UNS-1A", "M21x1-6g", "11.9-98 UNS-1B", "0.06-80 UNS-1A", "M8x1.25-9g"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := calc.ParseDesignation(text)
		if err != nil {
			if !strings.HasPrefix(err.Error(), calc.Quoted(text)+": ") {
				t.Errorf("%q: the error does not quote it: %v", text, err)
			}
			return
		}
		l, err := calc.LimitsOf(d)
		if err != nil {
			quotes := strings.Contains(err.Error(), calc.Quoted(d.String())) || strings.Contains(err.Error(), calc.LengthText(d.Nominal))
			if !quotes || l != (calc.Limits{}) {
				t.Errorf("%q: %+v and an error that quotes nothing: %v", text, l, err)
			}
			return
		}
		if d.Class == "" {
			t.Fatalf("%q: limits without a class", text)
		}
		for name, size := range map[string]calc.Length{"allowance": l.Allowance, "major": l.Major.Max, "least major": l.Major.Min,
			"pitch diameter": l.Pitch.Max, "least pitch diameter": l.Pitch.Min, "minor": l.Minor.Max, "least minor": l.Minor.Min} {
			if x := size.Inches(); math.IsNaN(x) || math.IsInf(x, 0) || x < -0.01 {
				t.Errorf("%q: %s %v", text, name, x)
			}
		}
		if side, ok := d.Side(); !ok || side != l.Side {
			t.Errorf("%q: %v limits for class %s", text, l.Side, d.Class)
		}
		below, above := l.Minor.Max, l.Major.Min // the minor of an outside thread and the major of an inside one have one limit
		if l.Pitch.Max < l.Pitch.Min || !l.Pitch.Given || l.Pitch.Min <= below || l.Pitch.Max >= above {
			t.Errorf("%q: pitch diameter %v to %v, minor up to %v, major from %v", text, l.Pitch.Min, l.Pitch.Max, below, above)
		}
		if l.Side == calc.Outside && (l.Major.Max < l.Major.Min || l.Major.Max > d.Nominal+1e-4 || l.Allowance < 0) {
			t.Errorf("%q: major %v to %v of %v, allowance %v", text, l.Major.Min, l.Major.Max, d.Nominal, l.Allowance)
		}
		if l.Side == calc.Inside && l.Minor.Max < l.Minor.Min {
			t.Errorf("%q: minor %v to %v", text, l.Minor.Min, l.Minor.Max)
		}
	})
}
