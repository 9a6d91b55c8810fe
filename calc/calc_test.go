package calc_test

import (
	"fmt"
	"math"
	"testing"

	"scratchpass/calc"
)

func TestRound(t *testing.T) {
	test := func(x float64, places int, want string) {
		t.Helper()
		if got := calc.Fixed(x, places); got != want {
			t.Errorf("Fixed(%v, %d) = %s, want %s", x, places, got, want)
		}
	}
	test(0.0625, 3, "0.063")
	test(math.Nextafter(0.0625, 0), 3, "0.063") // one step of the arithmetic below the edge
	test(math.Nextafter(0.0625, 1), 3, "0.063")
	test(0.0624999, 3, "0.062")
	test(-0.0625, 3, "-0.063")
	test(0.03125, 4, "0.0313")
	test(0.00005, 4, "0.0001")
	test(math.Nextafter(0.00005, 0), 4, "0.0001")
	test(0.0435, 3, "0.044")
	test(1.0005, 3, "1.001")
	test(-0.00001, 4, "0.0000") // never minus zero
	test(0.5, 0, "1")
	test(1e15+0.3, 4, "1000000000000000.2500") // the nearest double; nothing left to round
	test(math.NaN(), 3, "0.000")
	test(math.Inf(1), 3, "0.000")
	test(12, -3, "12")
}

func TestWithin(t *testing.T) {
	test := func(got, want, tol float64, right bool) {
		t.Helper()
		if calc.Within(got, want, tol) != right {
			t.Errorf("Within(%v, %v, %v) = %v", got, want, tol, !right)
		}
	}
	test(0.0480, 0.0475, 0.0005, true) // plain subtraction says no
	test(0.0470, 0.0475, 0.0005, true)
	test(0.0480001, 0.0475, 0.0005, false)
	test(1, 1, 0, true)
	test(1, 1, -1, false)
	test(math.NaN(), 1, 1, false)
	test(math.Inf(1), math.Inf(1), 1, false)
	for i := range 2000 { // every edge of a thousandth grid counts as inside
		want := float64(i) / 1000
		test(want+0.0005, want, 0.0005, true)
		test(want-0.0005, want, 0.0005, true)
		test(want+0.00050001, want, 0.0005, false)
	}
}

func TestNearRoundingEdge(t *testing.T) {
	test := func(x float64, want bool) {
		t.Helper()
		if calc.NearRoundingEdge(x, 4, 0.03) != want {
			t.Errorf("NearRoundingEdge(%v) = %v", x, !want)
		}
	}
	test(0.05415, false) // on the edge: everybody has these digits
	test(0.054151, true)
	test(0.054148, true)
	test(0.0542, false)
	test(0.05412, false)
}

func TestDialReadingRemainder(t *testing.T) {
	test := func(start, feed, turn calc.Length, want string, turns int) {
		t.Helper()
		got, n, err := calc.DialReading(start, feed, turn)
		if err != nil || calc.Fixed(got.Inches(), 4) != want || n != turns {
			t.Errorf("DialReading(%v, %v, %v) = %v, %d, %v", start, feed, turn, got, n, err)
		}
	}
	test(0.025, 0.088, 0.1, "0.0130", 1)
	test(0, 0.1, 0.1, "0.0000", 1) // ten cuts of 0.010 bring it to zero, not to 0.0999
	test(0, 0.01+0.01+0.01+0.01+0.01+0.01+0.01+0.01+0.01+0.01, 0.1, "0.0000", 1)
	test(0.02, -0.03, 0.1, "0.0900", -1)
	test(0.01, 0.24, 0.125, "0.0000", 2)
}

// Table of compound feeds with the compound at exactly 29 degrees, American
// National form: 8 TPI 0.0928, 13 TPI 0.0570, 20 TPI 0.0371 (the table rounds
// its middle figure up by 0.0001).
func ExampleCompoundTravel() {
	for _, n := range []calc.ThreadsPerInch{8, 13, 20} {
		pitch, _ := n.Pitch()
		h, _ := calc.RadialDepthOfForm(pitch, calc.AmericanNational)
		c, _ := calc.CompoundTravel(h, calc.Degrees(29))
		fmt.Println(calc.Fixed(c.Inches(), 4))
	}
	// Output:
	// 0.0928
	// 0.0571
	// 0.0371
}

// US Navy training manual p. 6-49: single depths 0.64952 P, 0.54127 P, 0.61343 P,
// and travel along the flank at 30 degrees 0.750, 0.625 and 0.708 P.
func ExampleForm_Factor() {
	for _, f := range []calc.Form{calc.AmericanNational, calc.BasicInternal, calc.UnifiedExternal} {
		h, _ := calc.RadialDepthOfForm(calc.Inch, f)
		flank, _ := calc.CompoundTravel(h, calc.Degrees(30))
		fmt.Println(calc.Fixed(f.Factor(), 5), calc.Fixed(flank.Inches(), 3))
	}
	// Output:
	// 0.64952 0.750
	// 0.54127 0.625
	// 0.61343 0.708
}

// School handout on thread calculations, 3/4-10: flat .0125, single depth .06495,
// minor .6201, compound at 30 degrees .0750.
func ExampleRadialDepthFromNominal() {
	pitch, _ := calc.ThreadsPerInch(10).Pitch()
	h, _ := calc.RadialDepthFromNominal(pitch, pitch.Times(1.0/8))
	c, _ := calc.CompoundTravel(h, calc.Degrees(30))
	fmt.Println(calc.Fixed(h.Inches(), 5), calc.Fixed(0.75-h.Times(2).Inches(), 4), calc.Fixed(c.Inches(), 4))
	// Output: 0.06495 0.6201 0.0750
}

// Joshua Rose, Modern Machine-Shop Practice: root diameter of 1-8 in the American
// National form, 0.8376.
func ExampleRadialDepthOfForm() {
	h, _ := calc.RadialDepthOfForm(calc.Inches(1.0/8), calc.AmericanNational)
	fmt.Println(calc.Fixed(1-h.Times(2).Inches(), 4))
	// Output: 0.8376
}

// The factors that books print are cases of the one depth formula.
func TestPublishedFactorsAreCasesOfRadialDepth(t *testing.T) {
	const pitch = calc.Inch / 10
	e, err := calc.BasicPitchDiameter(0.75, pitch)
	if err != nil {
		t.Fatal(err)
	}
	for flat, want := range map[calc.Length]string{0: "0.758", pitch / 8: "0.650", pitch / 6: "0.613", pitch / 4: "0.541"} {
		h, err := calc.RadialDepth(calc.Outside, 0.75, e, pitch, flat)
		if got := calc.Fixed(h.Over(pitch), 3); err != nil || got != want {
			t.Errorf("flat %v: factor %s, want %s (%v)", flat, got, want, err)
		}
		short, _ := calc.RadialDepthFromNominal(pitch, flat)
		if !calc.Within(short.Inches(), h.Inches(), 1e-12) {
			t.Errorf("RadialDepthFromNominal %v, RadialDepth %v", short, h)
		}
	}
}

// F. D. Jones, Turning and Boring, 1914: a 24-tooth worm wheel on a 6 TPI screw
// has numbered lines 1 in of travel apart, eight lines 1/2 in apart; 10 TPI may
// use any of the eight, and a multiple of the lead screw may engage anywhere.
func ExampleThreadDial() {
	dial := calc.ThreadDial{LeadScrew: 6, Teeth: 24, Marks: 8}
	spacing, _ := dial.Spacing()
	ten, _ := calc.ThreadsPerInch(10).Pitch()
	marks, _ := dial.SafeMarks(ten)
	twelve, _ := calc.ThreadsPerInch(12).Pitch()
	anywhere, _ := dial.AnyMoment(twelve)
	fmt.Println(spacing.Inches(), len(marks), anywhere)
	// Output: 0.5 8 true
}

func TestSafeMarks(t *testing.T) {
	test := func(d calc.ThreadDial, lead calc.Length, want string) {
		t.Helper()
		got, err := d.SafeMarks(lead)
		if fmt.Sprint(got) != want || err != nil {
			t.Errorf("%+v lead %v: %v, want %s (%v)", d, lead, got, want, err)
		}
	}
	wide, narrow := calc.ThreadDial{8, 32, 8}, calc.ThreadDial{8, 16, 8}
	test(wide, calc.Inch/13, "[0 2 4 6]")
	test(narrow, calc.Inch/13, "[0 4]")
	test(wide, calc.Inch/12, "[0 1 2 3 4 5 6 7]")
	test(wide, calc.Inch/11.5, "[0 4]")
	test(wide, calc.Inch/4.5, "[0 4]")
	test(wide, calc.Millimetres(1.5), "[]") // a metric lead: even the first mark is wrong once it comes round
	test(wide, calc.Inch/8*2, "[0 1 2 3 4 5 6 7]")
	test(narrow, calc.Inch/8*3, "[]") // three starts: the lead counts, not the pitch
}
