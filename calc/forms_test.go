package calc_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"scratchpass/calc"
)

// Every screw of the table, its largest and its least sizes, by the limits of class 2G.
func TestAcmeLimitsAgainstPublishedRows(t *testing.T) {
	for _, row := range publishedRows(t, "acme-screws.csv") {
		d := must[calc.AcmeDesignation](t)(calc.ParseAcme(row["thread"] + " ACME-2G"))
		l := must[calc.Limits](t)(calc.AcmeLimits(d, calc.Outside))
		for column, got := range map[string]calc.Length{"pitch_max": l.Pitch.Max, "minor_max": l.Minor.Max, "nominal": l.Major.Max,
			"pitch_min": l.Pitch.Min, "minor_min": l.Minor.Min, "major_min": l.Major.Min} {
			if want := cell(t, row, column); math.Abs(got.Inches()-want) > 0.0002+1e-9 || strings.HasSuffix(column, "_max") && math.Abs(got.Inches()-want) > 6e-5 {
				t.Errorf("%s %s: %v, published %v", row["thread"], column, got.Inches(), want)
			}
		}
	}
}

// Screw and nut of a class never meet but for the allowance, a finer class is closer, and a
// class that is none is refused.
func TestAcmeLimitsOfBothSides(t *testing.T) {
	for _, thread := range []string{"1/4-16", "3/8-12", "1-5", "1-1/2-4", "2-4", "3-2"} {
		before := calc.Length(1)
		for _, class := range []string{"", "2G", "3G", "4G"} {
			text := thread + " ACME"
			if class != "" {
				text += "-" + class
			}
			d := must[calc.AcmeDesignation](t)(calc.ParseAcme(text))
			screw := must[calc.Limits](t)(calc.AcmeLimits(d, calc.Outside))
			nut := must[calc.Limits](t)(calc.AcmeLimits(d, calc.Inside))
			if gap := nut.Pitch.Min - screw.Pitch.Max; !calc.Within(gap.Inches(), screw.Allowance.Inches(), 1e-9) {
				t.Errorf("%s: %v between screw and nut", text, gap)
			}
			if nut.Minor.Min <= screw.Minor.Max || nut.Major.Min <= screw.Major.Max || screw.Pitch.Min <= screw.Minor.Max {
				t.Errorf("%s: crests meet roots: %+v %+v", text, screw, nut)
			}
			width := screw.Pitch.Max - screw.Pitch.Min
			if class > "2G" && width >= before {
				t.Errorf("%s: its tolerance is %v, that of the class before %v", text, width, before)
			}
			before = width
		}
	}
	for _, text := range []string{"1-5 ACME-4C", "6-2 ACME-2G"} {
		d, err := calc.ParseAcme(text)
		if _, wrong := calc.AcmeLimits(d, calc.Outside); err != nil || wrong == nil {
			t.Errorf("%s: %v %v", text, err, wrong)
		}
	}
}

// At 30 degrees each formula for any flank gives what its own formula for 60-degree threads
// gives; at 14.5 what is published of Acme threads.
func TestFormulasOfAnyFlank(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 15))
	for range 2000 {
		p := pitchOf(r)
		f, h := p.Times(from(r, 0, 0.12)), p.Times(from(r, 0.1, 0.7))
		e := calc.Inches(from(r, 0.3, 3)) + p.Times(2)
		wire := p.Times(from(r, 0.56, 0.9))
		for name, pair := range map[string][2]calc.Length{
			"depth": {must[calc.Length](t)(calc.DepthForFlank(30, calc.Outside, e+p, e, p, f)), must[calc.Length](t)(calc.RadialDepth(calc.Outside, e+p, e, p, f))},
			"chip":  {must[calc.Length](t)(calc.ChipWidthForFlank(30, h, f, calc.BothFlanks)), must[calc.Length](t)(calc.ChipWidth(h, f, calc.BothFlanks))},
			"best":  {must[calc.Length](t)(calc.BestWireForFlank(30, p)), must[calc.Length](t)(calc.BestWire.Of(p))},
			"wires": {must[calc.Length](t)(calc.OverWiresForFlank(30, e, wire, p)), must[calc.Length](t)(calc.OverWires(e, wire, p))},
		} {
			if !calc.Within(pair[0].Inches(), pair[1].Inches(), 1e-12) {
				t.Fatalf("%s at P %v: %v and %v", name, p, pair[0], pair[1])
			}
		}
	}
	for _, n := range []calc.ThreadsPerInch{16, 12, 10, 8, 5, 4, 2} {
		p := must[calc.Length](t)(n.Pitch())
		flat := must[calc.Length](t)(calc.AcmeToolFlat(p))
		h := must[calc.Length](t)(calc.DepthForFlank(calc.AcmeAngle/2, calc.Outside, 3, 3-p.Times(0.5), p, flat))
		if want := must[calc.Length](t)(calc.AcmeDepth(p)); !calc.Within(h.Inches(), want.Inches(), 0.0001) {
			t.Errorf("%v TPI: the tool's depth is %v, the published one %v", n, h, want)
		}
	}
	if w := must[calc.Length](t)(calc.BestWireForFlank(14.5, 1)); math.Abs(w.Inches()-0.51645) > 5e-6 { // the factor that handbooks print
		t.Error(w)
	}
}

// An Acme groove has the tool's own flanks: its depth at half a pitch wide is that of the
// formula, and a cut along a flank at 14.5 degrees leaves that flank.
func TestAcmeGroove(t *testing.T) {
	p, flat := calc.Length(0.2), must[calc.Length](t)(calc.AcmeToolFlat(0.2))
	tip := calc.ToolTip{Flat: flat, Flank: 14.5}
	h := must[calc.Length](t)(calc.DepthForFlank(14.5, calc.Outside, 1, 0.9, p, flat))
	straight := must[calc.Groove](t)(calc.NewGroove(tip, p, []calc.ToolPass{{Radial: h}}))
	if e, ok := straight.PitchDiameter(calc.Outside, 1); !ok || !calc.Within(e.Inches(), 0.9, 1e-9) {
		t.Error(e, ok)
	}
	var passes []calc.ToolPass
	for k := 1; k <= 30; k++ {
		depth := h.Times(float64(k) / 30)
		passes = append(passes, calc.ToolPass{Radial: depth, Across: depth.Times(calc.Angle(14.5).Tan())})
	}
	along := must[calc.Groove](t)(calc.NewGroove(tip, p, passes))
	if !calc.Within(along.Area(), straight.Area(), 1e-9) || !calc.Within(along.WidthAt(h.Times(0.5)).Inches(), straight.WidthAt(h.Times(0.5)).Inches(), 1e-9) {
		t.Errorf("areas %v and %v", along.Area(), straight.Area())
	}
	if _, err := calc.NewGroove(calc.ToolTip{Flat: flat, Flank: 60}, p, nil); err == nil {
		t.Error("a flank at 60 degrees is taken")
	}
}

// Passes by equal section take the same section each, of any tip; with a sharp one their sums
// are the square-root rule.
func TestEqualSection(t *testing.T) {
	tan := math.Tan(14.5 * math.Pi / 180)
	section := func(h calc.Length) float64 { x := h.Inches(); return 0.0689*x + x*x*tan }
	depth, sharp := calc.Length(0), calc.Length(0)
	for k := 1; k <= 20; k++ {
		before := depth
		depth += must[calc.Length](t)(calc.EqualSection(14.5, before, 0.012, 0.0689))
		if got := section(depth) - section(before); !calc.Within(got, section(0.012), 1e-12) {
			t.Errorf("pass %d takes %v", k, got)
		}
		sharp += must[calc.Length](t)(calc.EqualSection(30, sharp, 0.02, 0))
		if want := 0.02 * math.Sqrt(float64(k)); !calc.Within(sharp.Inches(), want, 1e-9) {
			t.Errorf("sharp, pass %d: %v, want %v", k, sharp, want)
		}
	}
}

func TestParsePipe(t *testing.T) {
	for text, want := range map[string]string{
		"1/2-14 NPT": "1/2-14 NPT", "1/2 NPT": "1/2-14 NPT", "1-11.5 npt": "1-11.5 NPT", "1 1/4-11 1/2 NPT": "1-1/4-11.5 NPT",
		"1-1/2 - 11-1/2 - NPT": "1-1/2-11.5 NPT", "2\" NPT": "2-11.5 NPT", "1/8-27 NPT-LH": "1/8-27 NPT-LH",
	} {
		d, err := calc.ParsePipe(text)
		if err != nil || d.String() != want {
			t.Errorf("%q is %q (%v), want %q", text, d, err, want)
		}
		if again, err := calc.ParsePipe(d.String()); err != nil || again != d {
			t.Errorf("%q read again is %v (%v)", d, again, err)
		}
	}
	for text, want := range map[string]string{
		"1/2-18 NPT": "the pipe size 1/2 has 14 threads per inch", "5/8-14 NPT": "not a taper pipe thread", "1/2-14 NPTF": "not a taper pipe thread",
		"1/2-14 NPT 2 STARTS": "not a taper pipe thread", "NPT": "not a taper pipe thread", "3-8 NPT": "of the sizes 1/8 to 2",
	} {
		if d, err := calc.ParsePipe(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q gives %v and %v, want an error with %q", text, d, err, want)
		}
	}
}

func FuzzPipe(f *testing.F) {
	for _, s := range []string{"1/2-14 NPT", "1-11.5 NPT-LH", "1 1/4-11 1/2 npt", "NPT", "2\" NPT", "1/2-14 NPT (2 STARTS)"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := calc.ParsePipe(text)
		if err != nil {
			return
		}
		if again, err := calc.ParsePipe(d.String()); err != nil || again != d {
			t.Fatalf("%q is %v, read again %v (%v)", text, d, again, err)
		}
	})
}

// The standard's figures at both ends, and one turn of the gauge either way: P/16 on the
// diameter. From crest to root a thread in the middle is 0.8 P high at the most.
func TestPipeLimits(t *testing.T) {
	for _, s := range calc.PipeSizes {
		d := must[calc.PipeDesignation](t)(calc.ParsePipe(s.Size + " NPT"))
		pipe := must[calc.Pipe](t)(calc.PipeThread(s.Outside, s.TPI, s.L1))
		out := must[calc.Limits](t)(calc.PipeLimits(d, calc.Outside))
		in := must[calc.Limits](t)(calc.PipeLimits(d, calc.Inside))
		if !calc.Within(out.Pitch.Middle().Inches(), pipe.E0.Inches(), 1e-9) || !calc.Within(in.Pitch.Middle().Inches(), pipe.E1.Inches(), 1e-9) {
			t.Errorf("%s: %+v %+v", s.Size, out, in)
		}
		if turn := (out.Pitch.Max - out.Pitch.Min).Times(0.5).Times(16); !calc.Within(turn.Inches(), d.Pitch.Inches(), 1e-9) {
			t.Errorf("%s: a turn is %v along", s.Size, turn)
		}
		if most := out.Major.Max - pipe.E0; !calc.Within(most.Inches(), d.Pitch.Times(0.8).Inches(), 0.0001) {
			t.Errorf("%s: the crest stands %v over the pitch line", s.Size, most)
		}
		if out.Major.Min >= out.Major.Max || in.Minor.Min >= in.Minor.Max {
			t.Errorf("%s: no room between the truncations", s.Size)
		}
	}
	for _, row := range publishedRows(t, "pipe.csv") {
		_, most := must[calc.PipeDesignation](t)(calc.ParsePipe(row["size"] + " NPT")).PipeTruncation()
		compare(t, row["size"]+" truncation", row["truncation"], most.Inches())
	}
}

// 1-5 ACME-2G, as a maker of Acme screws prints it: pitch diameter .8920 to .8726.
func ExampleAcmeLimits() {
	d, _ := calc.ParseAcme("1-5 ACME-2G")
	l, _ := calc.AcmeLimits(d, calc.Outside)
	fmt.Println(calc.Fixed(l.Pitch.Max.Inches(), 4), calc.Fixed(l.Pitch.Min.Inches(), 4))
	// Output: 0.8920 0.8726
}
