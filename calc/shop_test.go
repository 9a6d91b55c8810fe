package calc_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scratchpass/calc"
)

// F. D. Jones, Turning and Boring, 1914: a lead of 3 mm on a lead screw of 6 TPI is
// cut by a driver of 90 and a driven gear of 127.
func ExampleFindTrains() {
	ratio, _ := calc.GearRatio(calc.Millimetres(3), calc.Inch/6)
	trains, _ := calc.FindTrains([]int{30, 40, 60, 90, 127}, ratio, 1)
	fmt.Println(trains[0].Drivers, trains[0].Driven, trains[0].Exact())
	// Output: [90] [127] true
}

// US War Department TM 1-420, 1942: 30 ft/min on 1 in is 114.6 rpm.
func ExampleSpindleSpeedFor() {
	s, _ := calc.SpindleSpeedFor(calc.FeetPerMinute(30), 1)
	fmt.Println(calc.Fixed(s.RPM(), 1))
	// Output: 114.6
}

// US Navy training manual, three-wire section: E 0.6832, 10 TPI, wire 0.0577: 0.7697.
func ExampleOverWires() {
	m, _ := calc.OverWires(0.6832, 0.0577, calc.Inch/10)
	fmt.Println(calc.Fixed(m.Inches(), 4))
	// Output: 0.7697
}

// US Navy training manual: best wire for 10 TPI 0.0577, least 0.56 P, largest 0.90 P.
func ExampleWiresFor() {
	w, _ := calc.WiresFor(calc.Inch / 10)
	fmt.Println(calc.Fixed(w.Best.Inches(), 4), calc.Fixed(w.Least.Inches(), 4), calc.Fixed(w.Largest.Inches(), 4))
	// Output: 0.0577 0.0560 0.0900
}

// Machinery's Handbook 31st ed. pp. 2010-2012, worked example, 1/2-28 UNEF-2A:
// allowance .0011, major .4989 to .4924, pitch .4757 to .4720.
func ExampleUnifiedLimits() {
	d, _ := calc.ParseDesignation("1/2-28 UNEF-2A")
	l, _ := calc.UnifiedLimits(d)
	for _, x := range []calc.Length{l.Allowance, l.Major.Max, l.Major.Min, l.Pitch.Max, l.Pitch.Min} {
		fmt.Print(calc.Fixed(x.Inches(), 4), " ")
	}
	// Output: 0.0011 0.4989 0.4924 0.4757 0.4720
}

// Metric thread chart after ASME B1.13M, M6x1-6g: major 5.974 to 5.794, pitch 5.324 to 5.212.
func ExampleMetricLimits() {
	d, _ := calc.ParseDesignation("M6-6g")
	l, _ := calc.MetricLimits(d)
	for _, x := range []calc.Length{l.Major.Max, l.Major.Min, l.Pitch.Max, l.Pitch.Min} {
		fmt.Print(calc.Fixed(x.Millimetres(), 3), " ")
	}
	// Output: 5.974 5.794 5.324 5.212
}

// F. D. Jones, Turning and Boring, 1914: Acme, 5 TPI 0.1100 and 8 TPI 0.0725 deep.
func ExampleAcmeDepth() {
	five, _ := calc.AcmeDepth(calc.Inch / 5)
	eight, _ := calc.AcmeDepth(calc.Inch / 8)
	fmt.Println(calc.Fixed(five.Inches(), 4), calc.Fixed(eight.Inches(), 4))
	// Output: 0.1100 0.0725
}

// Machinery's Data Sheets: Screw Threads, 1910: Acme tool, 4 TPI 0.0875, 5 TPI 0.0689.
func ExampleAcmeToolFlat() {
	four, _ := calc.AcmeToolFlat(calc.Inch / 4)
	five, _ := calc.AcmeToolFlat(calc.Inch / 5)
	fmt.Println(calc.Fixed(four.Inches(), 4), calc.Fixed(five.Inches(), 4))
	// Output: 0.0875 0.0689
}

// ASME B1.20.1-1983 as quoted in a pipe-thread table, 1/2-14 NPT: E0 .75843,
// E1 .77843, L2 .5337.
func ExamplePipeThread() {
	p, _ := calc.PipeThread(0.840, 14, 0.320)
	fmt.Println(calc.Fixed(p.E0.Inches(), 5), calc.Fixed(p.E1.Inches(), 5), calc.Fixed(p.L2.Inches(), 4), calc.Fixed(p.Angle.Degrees(), 4))
	// Output: 0.75843 0.77843 0.5337 1.7899
}

// E. Isakov, Boring: calculating deflection, Cutting Tool Engineering, July 2019:
// 911.1 N on a 25.4 mm bar, 101.6 mm out, gives 0.0757 mm.
func ExampleBarGive() {
	y, _ := calc.BarGive(911.1, calc.Millimetres(101.6), calc.Millimetres(25.4))
	fmt.Println(calc.Fixed(y.Millimetres(), 4))
	// Output: 0.0757
}

// School handout on thread calculations: lead angle of 3/4-10 at 0.6850, 2.6605.
func ExampleLeadAngle() {
	a, _ := calc.LeadAngle(calc.Inch/10, 0.6850)
	fmt.Println(calc.Fixed(a.Degrees(), 4))
	// Output: 2.6605
}

// Machinery's Handbook 31st ed. p. 2010: UNR external minor D - 1.190785 P.
func ExampleUNRMinor() {
	d, _ := calc.UNRMinor(2, 1)
	fmt.Println(calc.Fixed(2-d.Inches(), 6))
	// Output: 1.190785
}

func TestNearestTrains(t *testing.T) {
	// The usual stand-ins for 127 teeth: 63/80 for 100/127 is 125 ppm out, 47/37 for
	// 127/100 is 213 ppm (worked by hand).
	for _, c := range []struct {
		ratio float64
		gears []int
		want  float64
	}{{100.0 / 127, []int{63, 80}, 125}, {127.0 / 100, []int{47, 37}, 213}} {
		trains, err := calc.FindTrains(c.gears, c.ratio, 1)
		if err != nil || len(trains) != 1 || math.Abs(math.Abs(trains[0].PPM)-c.want) > 0.5 {
			t.Errorf("%v: %+v, want %v ppm (%v)", c.gears, trains, c.want, err)
		}
	}
	// Without a 127 gear the search finds a stand-in and says how far it is out.
	ratio, _ := calc.GearRatio(calc.Millimetres(2), calc.Inch/8)
	trains, err := calc.FindTrains([]int{20, 24, 30, 32, 36, 40, 44, 46, 48, 52, 54, 56, 60, 63, 64, 72, 80}, ratio, 5)
	if err != nil || len(trains) == 0 || trains[0].Exact() {
		t.Fatal(trains, err)
	}
	for i, tr := range trains {
		lead, err := calc.LeadOfTrain(tr.Drivers, tr.Driven, calc.Inch/8)
		if err != nil || !calc.Within(lead.Millimetres()/2-1, tr.PPM/1e6, 1e-9) {
			t.Errorf("%+v cuts %v mm (%v)", tr, lead.Millimetres(), err)
		}
		if i > 0 && math.Abs(tr.PPM) < math.Abs(trains[i-1].PPM)-1e-6 {
			t.Errorf("not sorted: %+v", trains)
		}
		if len(tr.Drivers) == 2 && (tr.Drivers[0]+tr.Driven[0] < tr.Drivers[1]+15 || tr.Drivers[1]+tr.Driven[1] < tr.Driven[0]+15) {
			t.Errorf("%+v can't mesh", tr)
		}
	}
	if got := trains[0].ErrorOver(calc.Millimetres(100)).Millimetres(); !calc.Within(got, trains[0].PPM/1e4, 1e-9) {
		t.Error(got)
	}
}

// The search against trying everything.
func TestFindTrainsAgainstAllTrains(t *testing.T) {
	gears := []int{20, 24, 30, 32, 32, 40, 45, 50, 60, 63, 80, 127}
	for _, lead := range []calc.Length{calc.Inch / 13, calc.Inch / 27, calc.Millimetres(1.5), calc.Millimetres(1.75), calc.Inch / 11.5, calc.Inch / 4} {
		ratio, _ := calc.GearRatio(lead, calc.Inch/8)
		best := math.Inf(1)
		for a := range gears {
			for b := range gears {
				if a == b {
					continue
				}
				best = math.Min(best, math.Abs(float64(gears[a])/float64(gears[b])/ratio-1)*1e6)
				for c := range gears {
					for d := range gears {
						if c == a || c == b || d == a || d == b || c == d {
							continue
						}
						if gears[a]+gears[b] >= gears[c]+15 && gears[c]+gears[d] >= gears[b]+15 {
							best = math.Min(best, math.Abs(float64(gears[a]*gears[c])/float64(gears[b]*gears[d])/ratio-1)*1e6)
						}
					}
				}
			}
		}
		trains, err := calc.FindTrains(gears, ratio, 3)
		if err != nil {
			t.Fatal(err)
		}
		if best > 5000 {
			if len(trains) > 0 {
				t.Errorf("lead %v: %+v, nothing is near", lead, trains)
			}
			continue
		}
		if len(trains) == 0 || math.Abs(math.Abs(trains[0].PPM)-best) > 1e-3 {
			t.Errorf("lead %v: %+v, the best is %v ppm out", lead, trains, best)
		}
	}
}

func TestSchedules(t *testing.T) {
	show := func(totals []calc.Length, err error) string {
		if err != nil {
			return err.Error()
		}
		var parts []string
		for _, l := range totals {
			parts = append(parts, calc.Fixed(l.Inches(), 4))
		}
		return strings.Join(parts, " ")
	}
	if got := show(calc.EqualSteps(0.054, 3)); got != "0.0180 0.0360 0.0540" {
		t.Error(got)
	}
	if got := show(calc.EqualArea(0.054, 9)); got != "0.0180 0.0255 0.0312 0.0360 0.0402 0.0441 0.0476 0.0509 0.0540" {
		t.Error(got)
	}
	if n, err := calc.PassesForFirstCut(0.054, 0.015); n != 13 || err != nil {
		t.Error(n, err)
	}
	if n, err := calc.PassesForFirstCut(0.054, 0.018); n != 9 || err != nil { // exactly nine, not ten
		t.Error(n, err)
	}
}

func TestFeedToFit(t *testing.T) {
	test := func(side calc.Side, mating, present, clearance calc.Length, reads calc.DialReads, want string) {
		t.Helper()
		got, err := calc.FeedToFit(side, mating, present, clearance, reads)
		if text := calc.Fixed(got.Inches(), 4); (err != nil && want != "error") || (err == nil && text != want) {
			t.Errorf("%s, %v, want %s", text, err, want)
		}
	}
	test(calc.Inside, 0.7000, 0.6972, 0.0020, calc.ReadsDiameter, "0.0048")
	test(calc.Inside, 0.7000, 0.6972, 0.0020, calc.ReadsRadius, "0.0024")
	test(calc.Outside, 0.7000, 0.7030, 0.0020, calc.ReadsDiameter, "0.0050")
	test(calc.Inside, 0.7000, 0.7030, 0.0020, calc.ReadsDiameter, "error")
}

func BenchmarkUnifiedLimits(b *testing.B) {
	d, _ := calc.ParseDesignation("3/4-10 UNC-2A")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := calc.LimitsOf(d); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMetricLimits(b *testing.B) {
	d, _ := calc.ParseDesignation("M20x2.5-6g")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := calc.LimitsOf(d); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFindTrains20Gears(b *testing.B) {
	gears := []int{20, 24, 28, 30, 32, 36, 40, 44, 45, 46, 48, 50, 52, 54, 56, 60, 63, 64, 72, 80}
	ratio, _ := calc.GearRatio(calc.Millimetres(1.75), calc.Inch/8)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := calc.FindTrains(gears, ratio, 5); err != nil {
			b.Fatal(err)
		}
	}
}
