package calc_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"scratchpass/calc"
)

// must returns a value of a function that can't fail on these inputs.
func must[T any](t *testing.T) func(v T, err error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func inchesOf(t *testing.T) func(calc.Length, error) float64 {
	return func(l calc.Length, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return l.Inches()
	}
}

// Every row of the lathe table. A row that no check here names is an error, and so
// is a check without its row.
func TestLatheTable(t *testing.T) {
	in, num := inchesOf(t), must[float64](t)
	ratio := func(lead, screw calc.Length) float64 { return num(calc.GearRatio(lead, screw)) }
	train := func(screw calc.Length, drivers, driven []int) float64 {
		return in(calc.LeadOfTrain(drivers, driven, screw))
	}
	pitch := func(n calc.ThreadsPerInch) calc.Length { return must[calc.Length](t)(n.Pitch()) }
	feed := func(n calc.ThreadsPerInch, f calc.Form) float64 {
		h := must[calc.Length](t)(calc.RadialDepthOfForm(pitch(n), f))
		return in(calc.CompoundTravel(h, 29))
	}
	pipe := must[calc.Pipe](t)(calc.PipeThread(0.840, 14, 0.320))
	dial := calc.ThreadDial{LeadScrew: 6, Teeth: 24, Marks: 8}
	lead310 := must[calc.Angle](t)(calc.LeadAngle(0.1, 0.6850)) // the handout rounds E to four places first
	lead18 := must[calc.Angle](t)(calc.LeadAngle(0.125, must[calc.Length](t)(calc.BasicPitchDiameter(1, 0.125))))
	lead440 := must[calc.Angle](t)(calc.LeadAngle(0.025, must[calc.Length](t)(calc.BasicPitchDiameter(0.112, 0.025))))
	bar := in(calc.BarGive(911.1, calc.Millimetres(101.6), calc.Millimetres(25.4))) * 25.4
	// Rohm prints specific forces for feeds at a tool angle of 45 degrees: thickness = feed x sin 45.
	specific := func(feed float64) float64 {
		h := calc.Millimetres(feed * math.Sin(math.Pi/4))
		return num(calc.CuttingForce(calc.MildSteel, calc.Millimetres(1), h)) / h.Millimetres() / 1000
	}
	type check struct {
		got, want, tol float64
	}
	checks := map[string][]check{
		"lead 3 mm, lead screw 6 TPI, simple train":                                      {{ratio(calc.Millimetres(3), calc.Inch/6), 90.0 / 127, 1e-12}},
		"rule: driver = screw constant x lead(mm) x 5, driven = 127":                     {{ratio(calc.Millimetres(1.75), calc.Inch/8), 8 * 1.75 * 5 / 127, 1e-12}},
		"1-3/4 TPI, lead screw 8, compound":                                              {{train(calc.Inch/8, []int{72, 64}, []int{36, 28}), 1 / 1.75, 1e-12}},
		"lead screw 4, true drivers 18 and 48, true driven 36 and 66":                    {{1 / train(calc.Inch/4, []int{18, 48}, []int{36, 66}), 11, 1e-9}},
		"lead screw 6, 18 TPI":                                                           {{ratio(calc.Inch/18, calc.Inch/6), 12.0 / 36, 1e-12}},
		"lead screw 2, 5 TPI, driver 40":                                                 {{40 / ratio(calc.Inch/5, calc.Inch/2), 100, 1e-9}},
		"guide screw 1.8 per inch, cut 2.3 per inch, driver 20":                          {{20 / ratio(calc.Inches(1/2.3), calc.Inches(1/1.8)), 25.5555, 0.0001}},
		"lead screw 6 TPI, 24-tooth worm wheel":                                          {{in(dial.Spacing()), 0.5, 1e-12}},
		"the same dial, 10 TPI":                                                          {{float64(len(must[[]int](t)(dial.SafeMarks(0.1)))), 8, 0}},
		"TPI a multiple of the lead screw":                                               {{map[bool]float64{true: 1}[must[bool](t)(dial.AnyMoment(calc.Inch/18))], 1, 0}},
		"American National external":                                                     {{calc.AmericanNational.Factor(), 0.64952, 5e-6}},
		"American National or Unified internal":                                          {{calc.BasicInternal.Factor(), 0.54127, 5e-6}},
		"Unified external 17/24 H":                                                       {{calc.UnifiedExternal.Factor(), 0.61343, 5e-6}},
		"UNR external, 2h":                                                               {{2 - in(calc.UNRMinor(2, 1)), 1.190785, 5e-7}},
		"1-8 root diameter, American National":                                           {{1 - 2*0.125*calc.AmericanNational.Factor(), 0.8376, 5e-5}},
		"compound at 29 degrees, American National form, 8 TPI":                          {{feed(8, calc.AmericanNational), 0.0928, 1e-4}},
		"compound at 29 degrees, American National form, 13 TPI":                         {{feed(13, calc.AmericanNational), 0.0570, 2e-4}},
		"compound at 29 degrees, American National form, 20 TPI":                         {{feed(20, calc.AmericanNational), 0.0371, 1e-4}},
		"rule of thumb: compound travel about pitch / 1.5, an estimate to stop short of": {{in(calc.RuleOfThumbTravel(pitch(12))), 0.0556, 1e-4}},
		"travel along the flank at 30 degrees: American National 0.750 P, Unified external 0.708 P, internal 0.625 P": {
			{in(calc.CompoundTravel(calc.Inches(calc.AmericanNational.Factor()), 30)), 0.750, 5e-4},
			{in(calc.CompoundTravel(calc.Inches(calc.UnifiedExternal.Factor()), 30)), 0.708, 5e-4},
			{in(calc.CompoundTravel(calc.Inches(calc.BasicInternal.Factor()), 30)), 0.625, 5e-4}},
		"3/4-10 set: flat .0125, single depth .06495, minor .6201, compound at 30 degrees .0750": {
			{in(calc.RadialDepthFromNominal(0.1, 0.0125)), 0.06495, 5e-6},
			{0.75 - 2*in(calc.RadialDepthFromNominal(0.1, 0.0125)), 0.6201, 5e-5},
			{in(calc.CompoundTravel(0.06495, 30)), 0.0750, 5e-5}},
		"rpm = ft/min / (0.2618 D)": {{must[calc.SpindleSpeed](t)(calc.SpindleSpeedFor(calc.FeetPerMinute(30), 1)).RPM(), 114.6, 0.05}},
		"3/4-10":                    {{lead310.Degrees(), 2.6605, 1e-4}},
		"1-8":                       {{lead18.Degrees(), 2 + 29.0/60, 0.5 / 60}},
		"4-40":                      {{lead440.Degrees(), 4 + 45.0/60, 0.5 / 60}},
		"depth = P/2 + .010 (10 TPI and coarser)": {
			{in(calc.AcmeDepth(0.2)), 0.1100, 5e-5}, {in(calc.AcmeDepth(0.125)), 0.0725, 5e-5}},
		"tool flat .3707 P - .0052": {
			{in(calc.AcmeToolFlat(0.25)), 0.0875, 5e-5}, {in(calc.AcmeToolFlat(0.2)), 0.0689, 5e-5}},
		"NPT E0 = D - (.050 D + 1.1) P; E1 = E0 + .0625 L1; L2 = (.80 D + 6.8) P; taper 1 in 16": {
			{pipe.E0.Inches(), 0.75843, 1e-5}, {pipe.E1.Inches(), 0.77843, 1e-5}, {pipe.L2.Inches(), 0.5337, 5e-5}},
		"y = F L^3 / (3 E I), F 911.1 N, L 101.6 mm, E 206000 N/mm2, I 20432 mm4": {{bar, 0.0757, 5e-5}},
		"I of solid round 25.4 mm": {{num(calc.SecondMomentRound(1)), 20432, 0.5}},
		"kc = kc1.1 h^-mc, St 42: kc1.1 1780 N/mm2, mc 0.17": {
			{specific(0.16), 2.60, 0.06}, {specific(0.25), 2.40, 0.06}, {specific(0.40), 2.20, 0.06},
			{specific(0.63), 2.05, 0.06}, {specific(1.0), 1.90, 0.06}, {specific(1.6), 1.80, 0.06}},
	}
	seen := map[string]bool{}
	for _, row := range publishedRows(t, "lathe.csv") {
		given := row["given"]
		cs, ok := checks[given]
		if !ok {
			t.Errorf("no check for the row %q (%s)", given, row["source"])
		}
		seen[given] = true
		for _, c := range cs {
			if math.Abs(c.got-c.want) > c.tol*(1+1e-9) {
				t.Errorf("%s: %v, published %v (%s)", given, c.got, c.want, row["source"])
			}
		}
	}
	for given := range checks {
		if !seen[given] {
			t.Errorf("a check for %q, which is no row", given)
		}
	}
}

// Every row of the wires table.
func TestWiresTable(t *testing.T) {
	in := inchesOf(t)
	compared := 0
	for _, row := range publishedRows(t, "wires.csv") {
		var d, n, e float64
		given := row["given"]
		switch {
		case strings.HasPrefix(given, "best / least"):
			w := must[calc.Wires](t)(calc.WiresFor(0.1))
			for got, want := range map[calc.Length]float64{w.Best: 0.057735, w.Least: 0.056, w.Largest: 0.09} {
				if math.Abs(got.Inches()-want) > 5e-7 {
					t.Errorf("%s: %v, published %v", given, got, want)
				}
			}
			compared += 3
			continue
		case strings.HasPrefix(given, "best wire"):
			if _, err := fmt.Sscanf(given, "best wire, %g TPI", &n); err != nil {
				t.Fatal(err)
			}
			w := must[calc.Wires](t)(calc.WiresFor(calc.Inches(1 / n)))
			near(t, row, w.Best.Inches())
			compared++
			continue
		case strings.HasPrefix(given, "E"):
			if _, err := fmt.Sscanf(given, "E %g, %g TPI", &e, &n); err != nil {
				t.Fatal(err)
			}
		default:
			if _, err := fmt.Sscanf(given, "D %g, %g TPI", &d, &n); err != nil {
				t.Fatal(err)
			}
		}
		w, _ := strconv.ParseFloat(row["wire"], 64)
		pitch, wire := calc.Inches(1/n), calc.Inches(w)
		if e > 0 {
			m := in(calc.OverWires(calc.Inches(e), wire, pitch))
			near(t, row, m)
			if back := in(calc.PitchDiameterFromWires(calc.Inches(m), wire, pitch)); math.Abs(back-e) > 1e-12 {
				t.Errorf("%s: back from the reading %v", given, back)
			}
		} else {
			// M = D - 1.515544 P + 3 W is the reading for the basic pitch diameter.
			basic := must[calc.Length](t)(calc.BasicPitchDiameter(calc.Inches(d), pitch))
			near(t, row, in(calc.OverWires(basic, wire, pitch)))
		}
		compared++
	}
	if compared < 17 {
		t.Errorf("only %d values", compared)
	}
}

// near compares with a row's expected value within its tolerance.
func near(t *testing.T, row map[string]string, got float64) {
	t.Helper()
	want, err1 := strconv.ParseFloat(row["expected"], 64)
	tol, err2 := strconv.ParseFloat(row["tolerance"], 64)
	if err1 != nil || err2 != nil {
		t.Fatalf("row %v", row)
	}
	if row["given"] == "D 0.75, 10 TPI" { // the handbook takes 1.5155 P: its 0.80845 prints as 0.8085, ours 0.808446 as 0.8084
		tol = 0.000055
	}
	if math.Abs(got-want) > tol*(1+1e-6) {
		t.Errorf("%s: %.6f, published %v (%s)", row["given"], got, want, row["source"])
	}
}
