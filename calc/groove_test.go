package calc_test

import (
	"math"
	"testing"

	"scratchpass/calc"
)

// A groove cut to the depth of the formula has the pitch diameter of the formula,
// whatever the flat, the nose, the way of feeding and the number of passes.
func TestGroovePitchDiameter(t *testing.T) {
	const pitch, nominal = calc.Inch / 10, calc.Length(0.75)
	e, _ := calc.BasicPitchDiameter(nominal, pitch)
	for _, flat := range []calc.Length{0, 0.005, 0.0125, pitch / 6, pitch / 4} {
		h, err := calc.RadialDepth(calc.Outside, nominal, e, pitch, flat)
		if err != nil {
			t.Fatal(err)
		}
		straight := make([]passMove, 12)
		for i := range straight {
			straight[i].straight = h.Times(1.0 / 12)
		}
		passes := passesOf(straight, 29.5)
		g, err := calc.NewGroove(calc.ToolTip{Flat: flat}, pitch, passes)
		got, ok := g.PitchDiameter(calc.Outside, nominal)
		if err != nil || !ok || !calc.Within(got.Inches(), e.Inches(), 1e-12) {
			t.Errorf("flat %v: %v, want %v (%v %v)", flat, got, e, ok, err)
		}
		// With the compound at exactly 30 degrees one flank stays where it is.
		c, _ := calc.CompoundTravel(h, 30)
		passes = passesOf([]passMove{{compound: c.Times(0.5)}, {compound: c.Times(0.5)}, {}}, 30)
		g, _ = calc.NewGroove(calc.ToolTip{Flat: flat}, pitch, passes)
		if got, ok := g.PitchDiameter(calc.Outside, nominal); !ok || !calc.Within(got.Inches(), e.Inches(), 1e-9) {
			t.Errorf("flat %v by compound: %v, want %v", flat, got, e)
		}
	}
	// A nose cuts as deep as a flat of 2 r tan 30.
	flat, _ := calc.FlatOfNose(0.005)
	h, _ := calc.RadialDepth(calc.Outside, nominal, e, pitch, flat)
	deeper := h // the tip of the nose stands r above the sharp corner of a tool with that flat's flanks
	g, err := calc.NewGroove(calc.ToolTip{Nose: 0.005}, pitch, []calc.ToolPass{{Radial: deeper}})
	if got, ok := g.PitchDiameter(calc.Outside, nominal); err != nil || !ok || math.Abs((got-e).Inches()) > 2e-4 {
		t.Errorf("nose: %v, want about %v", got, e)
	}
	// Inside it goes the other way.
	e, _ = calc.BasicPitchDiameter(nominal, pitch)
	bore, _ := calc.BasicInternalMinor(nominal, pitch)
	h, _ = calc.RadialDepthFromBasicBore(pitch, 0.0125)
	g, _ = calc.NewGroove(calc.ToolTip{Flat: 0.0125}, pitch, []calc.ToolPass{{Radial: h}})
	if got, ok := g.PitchDiameter(calc.Inside, bore); !ok || !calc.Within(got.Inches(), e.Inches(), 1e-12) {
		t.Errorf("inside: %v, want %v", got, e)
	}
}

// A wrong line cuts a second groove beside the first; a spring pass changes nothing;
// metal never comes back.
func TestGrooveOfPasses(t *testing.T) {
	const pitch = calc.Inch / 13
	tip := calc.ToolTip{Flat: 0.006}
	one := []calc.ToolPass{{Radial: 0.02}}
	g, _ := calc.NewGroove(tip, pitch, one)
	wrong, _ := calc.NewGroove(tip, pitch, append(one, calc.ToolPass{Across: pitch / 2, Radial: 0.02}))
	if !calc.Within(wrong.Area(), 2*g.Area(), 1e-12) {
		t.Errorf("two grooves %v, one %v", wrong.Area(), g.Area())
	}
	spring, _ := calc.NewGroove(tip, pitch, append(one, one[0], one[0]))
	if spring.Area() != g.Area() {
		t.Error("a spring pass changed the groove")
	}
	whole, _ := calc.NewGroove(tip, pitch, append(one, calc.ToolPass{Across: pitch, Radial: 0.02}))
	if !calc.Within(whole.Area(), g.Area(), 1e-12) {
		t.Error("a shift of a whole pitch is another groove")
	}
	if want := 0.006*0.02 + 0.02*0.02*math.Tan(math.Pi/6); !calc.Within(g.Area(), want, 1e-12) { // the tip's rectangle and two flanks
		t.Errorf("area %v, want %v", g.Area(), want)
	}
	none, _ := calc.NewGroove(tip, pitch, nil)
	if _, ok := none.PitchLine(); none.Area() != 0 || ok || none.Depth() != 0 {
		t.Error("an uncut blank has a groove")
	}
	if w := g.WidthAt(0.01); !calc.Within(w.Inches(), 0.006+2*0.01*math.Tan(math.Pi/6), 1e-12) {
		t.Error(w)
	}
	if w := g.WidthAt(0.021); w != 0 {
		t.Error(w)
	}
	if len(g.Points()) < 6 {
		t.Error(g.Points())
	}
}

func BenchmarkGroove30Passes(b *testing.B) {
	moves := make([]passMove, 30)
	for i := range moves {
		moves[i].compound = 0.002
		if i%5 == 4 {
			moves[i] = passMove{straight: 0.001}
		}
	}
	passes := passesOf(moves, 29.5)
	b.ReportAllocs()
	for b.Loop() {
		g, err := calc.NewGroove(calc.ToolTip{Flat: 0.0125}, calc.Inch/10, passes)
		if err != nil {
			b.Fatal(err)
		}
		if _, ok := g.PitchLine(); !ok {
			b.Fatal("no pitch line")
		}
	}
}
