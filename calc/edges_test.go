package calc_test

import (
	"fmt"
	"testing"

	"scratchpass/calc"
)

// US Navy training manual p. 6-49: an inside thread is 0.54127 P deep. That is a tool
// with a flat of P/8, from the basic bore to the basic pitch diameter.
func ExampleRadialDepth_inside() {
	const nominal, pitch = calc.Length(1), calc.Inch / 8
	bore, _ := calc.BasicInternalMinor(nominal, pitch)
	e, _ := calc.BasicPitchDiameter(nominal, pitch)
	h, _ := calc.RadialDepth(calc.Inside, bore, e, pitch, pitch/8)
	fmt.Println(calc.Fixed(h.Over(pitch), 5))
	// Output: 0.54127
}

// US Navy training manual p. 6-49: the root lies 0.61343 P deep, twice that on the
// diameter: 0.77314 on a thread of 2 in with a pitch of 1 in, 0.8466 on 1-8.
func ExampleExternalMinor() {
	coarse, _ := calc.ExternalMinor(2, 1)
	inch, _ := calc.ExternalMinor(1, calc.Inch/8)
	fmt.Println(calc.Fixed(coarse.Inches(), 4), calc.Fixed(inch.Inches(), 4))
	// Output: 0.7731 0.8466
}

// The side an inside depth counts to: a larger bore leaves less to cut, a larger pitch
// diameter more. By hand, 10 TPI with a flat of 0.0125: y = (0.05 - 0.0125) x 0.866025 =
// 0.032476.
func TestRadialDepthInside(t *testing.T) {
	for _, c := range []struct {
		side         calc.Side
		start, pitch calc.Length
		want         string
	}{
		{calc.Inside, 0.6417, 0.6850, "0.0541"},  // (0.6850 - 0.6417) / 2 + 0.0325
		{calc.Inside, 0.6517, 0.6850, "0.0491"},  // 0.005 less for a bore 0.010 larger
		{calc.Inside, 0.6417, 0.6950, "0.0591"},  // 0.005 more for a pitch diameter 0.010 larger
		{calc.Outside, 0.7500, 0.6850, "0.0650"}, // (0.7500 - 0.6850) / 2 + 0.0325
	} {
		h, err := calc.RadialDepth(c.side, c.start, c.pitch, calc.Inch/10, 0.0125)
		if got := calc.Fixed(h.Inches(), 4); err != nil || got != c.want {
			t.Errorf("%v from %v to %v: %s, want %s (%v)", c.side, c.start, c.pitch, got, c.want, err)
		}
	}
	if h, err := calc.RadialDepth(calc.Inside, 0.7600, 0.6850, calc.Inch/10, 0.0125); err == nil { // 0.0325 - 0.0375
		t.Errorf("from a bore that is too large: %v", h)
	}
}

// The widest flats of the basic profile, at 10 TPI: 0.0250 outside, 0.0125 inside (the
// flat of the school handout for 3/4-10). Half a thousandth more passes, no more.
func TestWidestFlat(t *testing.T) {
	const pitch, slack, hair = calc.Inch / 10, calc.Thou / 2, calc.Thou / 1000
	for _, c := range []struct {
		side  calc.Side
		want  calc.Length
		depth func(pitch, flat calc.Length) (calc.Length, error)
	}{{calc.Outside, 0.0250, calc.RadialDepthFromNominal}, {calc.Inside, 0.0125, calc.RadialDepthFromBasicBore}} {
		if got, err := calc.WidestFlat(c.side, pitch); err != nil || !calc.Within(got.Inches(), c.want.Inches(), 1e-12) {
			t.Errorf("%v: %v, want %v (%v)", c.side, got, c.want, err)
		}
		for _, flat := range []calc.Length{0, c.want, c.want + slack - hair} {
			if _, err := c.depth(pitch, flat); err != nil {
				t.Errorf("%v, flat %v: %v", c.side, flat, err)
			}
		}
		for _, flat := range []calc.Length{-hair, c.want + slack + hair} {
			if h, err := c.depth(pitch, flat); err == nil {
				t.Errorf("%v, flat %v: %v", c.side, flat, h)
			}
		}
	}
}

// School handout on thread calculations: 3/4-10 slopes 2.6605 degrees. With 3 degrees of
// running clearance the leading side wants 5.6605 and the trailing one 0.3395; a steeper
// thread clears its trailing side by itself.
func TestSideClearance(t *testing.T) {
	for _, c := range []struct{ running, slope, leading, trailing calc.Angle }{
		{3, 2.6605, 5.6605, 0.3395}, {3, 5, 8, -2}, {0, 2, 2, -2}, {15, 30, 45, -15},
	} {
		leading, trailing, err := calc.SideClearance(c.running, c.slope)
		if err != nil || !calc.Within(leading.Degrees(), c.leading.Degrees(), 1e-12) || !calc.Within(trailing.Degrees(), c.trailing.Degrees(), 1e-12) {
			t.Errorf("%+v: %v and %v (%v)", c, leading, trailing, err)
		}
	}
	for _, c := range [][2]calc.Angle{{-0.1, 3}, {15.1, 3}, {3, -0.1}, {3, 30.1}} {
		if leading, _, err := calc.SideClearance(c[0], c[1]); err == nil {
			t.Errorf("%v: %v", c, leading)
		}
	}
}

// US Navy training manual p. 6-49: the whole height is 0.54127 P a side, of the American
// National form 0.64952 P. A bore that much under nominal leaves 100 percent.
func TestPercentOfThread(t *testing.T) {
	for _, c := range []struct {
		bore    calc.Length
		percent calc.Formula[func(nominal, bore, pitch calc.Length) (float64, error)]
		want    string
	}{
		{0.641746, calc.ThreadPercent, "100.0"},    // 0.750 - 2 x 0.054127
		{0.620096, calc.ThreadPercentOld, "100.0"}, // 0.750 - 2 x 0.064952
		{0.641746, calc.ThreadPercentOld, "83.3"},  // 5/8 H of 3/4 H
		{0.620096, calc.ThreadPercent, "120.0"},
		{0.6688, calc.ThreadPercent, "75.0"},    // 0.0812 / 0.108253
		{0.6688, calc.ThreadPercentOld, "62.5"}, // 0.0812 / 0.129904
		{0.7500, calc.ThreadPercent, "0.0"},
	} {
		got, err := c.percent.Of(0.75, c.bore, calc.Inch/10)
		if text := calc.Fixed(got, 1); err != nil || text != c.want {
			t.Errorf("bore %v, %s: %s, want %s (%v)", c.bore, c.percent.Text, text, c.want, err)
		}
	}
	if got, err := calc.ThreadPercent.Of(0.75, 0.7501, calc.Inch/10); err == nil {
		t.Errorf("a bore over nominal: %v", got)
	}
}

// Two equal gears in a compound train only carry the turn on: the simple train of the
// other two is the same, and the only one to be offered. Each case would mesh.
func TestTrainsWithTwoEqualGears(t *testing.T) {
	for _, c := range []struct {
		gears []int
		ratio float64
		want  string
	}{
		{[]int{20, 32, 32, 40}, 20.0 / 40, "20/40"}, // not 20/32 x 32/40
		{[]int{20, 32, 32, 40}, 40.0 / 20, "40/20"}, // not 32/32 x 40/20
		{[]int{24, 24, 40, 60}, 40.0 / 60, "40/60"}, // not 40/24 x 24/60
		{[]int{20, 30, 60, 60}, 20.0 / 30, "20/30"}, // not 20/60 x 60/30
	} {
		trains, err := calc.FindTrains(c.gears, c.ratio, 10)
		if err != nil || len(trains) != 1 || trains[0].String() != c.want {
			t.Errorf("%v: %v, want %s alone (%v)", c.gears, trains, c.want, err)
		}
	}
}

// The finest lead that any room deals with, 0.2 mm, is a lead for gears
// and half-nut too, just as 12 in is; beyond, an error.
func TestEndsOfTheLeads(t *testing.T) {
	fine, err := calc.ThreadsPerInch(100).Pitch()
	if err != nil {
		t.Fatal(err)
	}
	for _, lead := range []calc.Length{calc.FinestPitch, fine, 12} {
		if r, err := calc.GearRatio(lead, calc.Inch/8); err != nil || !calc.Within(r, lead.Inches()*8, 1e-12) {
			t.Errorf("ratio for %v: %v (%v)", lead, r, err)
		}
		if r, err := calc.GearRatio(calc.Inch/8, lead); err != nil || !calc.Within(r, 0.125/lead.Inches(), 1e-12) {
			t.Errorf("ratio on a screw of %v: %v (%v)", lead, r, err)
		}
		if on, err := calc.RunToNut(lead.Times(0.75), lead, 0.1); err != nil || !calc.Within(on.Over(lead), 0.25, 1e-9) {
			t.Errorf("run to the nut on a screw of %v: %v (%v)", lead, on, err)
		}
	}
	for _, lead := range []calc.Length{0, 0.00787, 12.00001} {
		_, err1 := calc.GearRatio(lead, calc.Inch/8)
		_, err2 := calc.GearRatio(calc.Inch/8, lead)
		_, err3 := calc.RunToNut(0.1, lead, 0.1)
		if err1 == nil || err2 == nil || err3 == nil {
			t.Errorf("%v passes: %v %v %v", lead, err1, err2, err3)
		}
	}
}

// A whole number of inches keeps its decimals: 2.000-56 printed as 2-56 would be a
// number 2 screw.
func TestSizesAreWrittenPlainly(t *testing.T) {
	for text, want := range map[string]string{
		"2.000-56 UNS":  "2.0000-56 UNS",
		"1.000-8 UNC":   "1.0000-8 UNC",
		"0.4321-20 UNS": "0.4321-20 UNS",
		".4375-20":      "7/16-20 UNF",
		"1.125-7":       "1-1/8-7 UNC",
		"2-56":          "2-56 UNC",
	} {
		d, err := calc.ParseDesignation(text)
		if err != nil || d.String() != want {
			t.Errorf("%s: %s, want %s (%v)", text, d, want, err)
			continue
		}
		if again, err := calc.ParseDesignation(d.String()); err != nil || !calc.Within(again.Nominal.Inches(), d.Nominal.Inches(), 1e-4) {
			t.Errorf("%s prints %s, which is %v in (%v)", text, d, again.Nominal, err)
		}
	}
}

// Fractions are of 64ths, above 0 and up to 1000 in.
func TestFractionText(t *testing.T) {
	for l, want := range map[calc.Length]string{
		1.0 / 64: "1/64", 0.75: "3/4", 2: "2", 1.125: "1-1/8", 999 + 63.0/64: "999-63/64", 1000: "1000",
		0: "", -0.5: "", -2: "", 1000 + 1.0/64: "", 1.0 / 128: "", 0.4321: "",
	} {
		if got, ok := calc.FractionText(l); got != want || ok != (want != "") {
			t.Errorf("%v: %q %v, want %q", l, got, ok, want)
		}
	}
}

// A side is read by the trade's word and by the name that files had first, and by no other.
func TestParseSide(t *testing.T) {
	for text, want := range map[string]calc.Side{"outside": calc.Outside, "external": calc.Outside, "inside": calc.Inside, "internal": calc.Inside} {
		if got, ok := calc.ParseSide(text); !ok || got != want {
			t.Errorf("%q is read as %v, %v", text, got, ok)
		}
	}
	for _, text := range []string{"", "nut", "External"} {
		if got, ok := calc.ParseSide(text); ok {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}
