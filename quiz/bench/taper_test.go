package bench

import (
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Which callouts the bench cuts, and what it says of the others.
func TestFormsOfThread(t *testing.T) {
	for text, want := range map[string]Form{"3/4-10 UNC-2A": Vee, "M16x2-6g": Vee, "1-5 ACME-2G": Acme, "1-5 ACME": Acme, "1/2-14 NPT": Pipe, "1/2 npt": Pipe} {
		if d, err := ParseThread(text); err != nil || formOf(d) != want {
			t.Errorf("%q: %v %v", text, formOf(d), err)
		}
	}
	for text, want := range map[string]string{
		"1/2-14 BSP": "Acme and NPT, and no BSP", "1/2-14 NPTF": "and no NPTF", "1-5 STUB ACME": "and no STUB", "Tr 24x5": "and no TR", "1/2-18 NPT": "14 threads per inch",
	} {
		if err := CheckThread(content.Job{Thread: text}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
	for _, c := range []struct {
		w    content.Job
		want string
	}{
		{content.Job{Thread: "1/2-14 NPT", Taper: "none"}, "cut here with a taper attachment"},
		{content.Job{Thread: "1/2-14 NPT", Taper: "set-over"}, `taper "set-over": give attachment or none`},
		{content.Job{Thread: "3/4-10 UNC-2A", Taper: "attachment"}, "that is for a taper pipe thread"},
		{content.Job{Thread: "1-5 ACME-2G-LH"}, "of 60 degrees"},
		{content.Job{Thread: "1/2-14 NPT-LH"}, "of 60 degrees"},
		{content.Job{Thread: "1-5 ACME-2G 2 STARTS"}, "of 60 degrees"},
		{content.Job{Thread: "1-5 ACME-2G", Towards: "tailstock"}, "of 60 degrees"},
		{content.Job{Thread: "1-5 ACME-4C"}, "2G, 3G or 4G"},
		{content.Job{Thread: "1-5 ACME-2G", Flat: "0.080 in"}, "flat of the tool"},
		{content.Job{Thread: "1/2-14 NPT", Flat: "0.009 in"}, "flat of the tool"},
	} {
		if _, err := ParseJob(Usual(c.w, machine.InchLathe), machine.InchLathe); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: %v", c.w, err)
		}
	}
}

// The compound of an Acme thread stands at half its angle: 29.5 is refused on a card.
func TestTheAngleOfACard(t *testing.T) {
	for _, c := range []struct {
		thread string
		angle  calc.Angle
		ok     bool
	}{
		{"1-5 ACME-2G", AsUsual, true}, {"1-5 ACME-2G", 14.5, true}, {"1-5 ACME-2G", 14, true}, {"1-5 ACME-2G", 29.5, false}, {"1-5 ACME-2G", 15.5, false},
		{"1/2-14 NPT", AsUsual, true}, {"1/2-14 NPT", 30, true}, {"1/2-14 NPT", 14.5, false}, {"3/4-10 UNC-2A", 29, true}, {"3/4-10 UNC-2A", 0, false},
	} {
		j, err := ParseJob(Usual(content.Job{Thread: c.thread}, machine.InchLathe), machine.InchLathe)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := NewPlan(j, c.angle); (err == nil) != c.ok {
			t.Errorf("%s at %v: %v", c.thread, c.angle, err)
		}
	}
}

// The gauge stands where the pitch diameter says: a turn is a sixteenth of the pitch, short
// while metal is left, on both sides.
func TestWhereTheTaperGaugeStands(t *testing.T) {
	for _, side := range []string{"outside", "inside"} {
		p := planOf(t, content.Job{Thread: "1/2-14 NPT", Side: side}, machine.InchLathe)
		at := func(turns float64) float64 {
			j := p.Job
			b := New(j)
			e := j.Limits.Pitch.Middle() + j.Thread.Pitch.Times(turns*calc.PipeTaper*b.in())
			depth, err := calc.DepthForFlank(30, j.Side, j.Start, e, j.Thread.Pitch, j.flat())
			if err != nil {
				t.Fatal(err)
			}
			b.Passes = []Pass{{Depth: depth, Set: depth, From: 0, To: j.Length, Lead: j.Thread.Lead()}}
			off, ok := b.turnsOff()
			if want := map[bool]string{true: "goes", false: "binds"}[turns <= 1]; turns >= -1 && b.goes() != want {
				t.Errorf("%s: %v turns off it %s", side, turns, b.goes())
			}
			if turns < -1 && b.goes() != "shakes" {
				t.Errorf("%s: %v turns off it %s", side, turns, b.goes())
			}
			if !ok {
				t.Fatal(side)
			}
			return off
		}
		for _, turns := range []float64{-1.5, -0.9, 0, 0.9, 1.5, 3} {
			if got := at(turns); !calc.Within(got, turns, 1e-6) {
				t.Errorf("%s: %v turns, want %v", side, got, turns)
			}
		}
	}
}

// With the attachment unset the tool goes on parallel to the axis: deeper by 1/32 of the way.
func TestWithoutItsTaper(t *testing.T) {
	b := readyFor(t, content.Job{Thread: "1-11.5 NPT"}, 70)
	p := Pass{Depth: 0.03, Set: 0.03, Lean: b.lean(), To: b.Job.Length}
	first, last := b.Job.deepAt(p, b.Job.touchAt()), b.Job.deepAt(p, b.Job.Length)
	if way := (b.Job.Length - b.Job.touchAt()).Times(1.0 / 32); first != 0.03 || !calc.Within((last-first).Inches(), way.Inches(), 1e-12) {
		t.Errorf("%v at touch-off, %v at the end", first, last)
	}
	b.Taper = calc.PipeTaper
	if b.lean() != 0 || readyFor(t, content.Job{Thread: "3/4-10 UNC-2A"}, 70).lean() != 0 {
		t.Error("a lean without a cause")
	}
}

// On a cone the learner says what the tool is squared to; elsewhere there is no cone.
func TestWhatTheToolIsSquaredTo(t *testing.T) {
	do := func(thread string, moves ...string) (Bench, string) {
		b, said := readyFor(t, content.Job{Thread: thread}, 70), ""
		for _, text := range moves {
			e, err := Parse(text, machine.Imperial)
			if err != nil {
				t.Fatal(err)
			}
			var happened []Happening
			if b, happened = b.Step(e); len(happened) > 0 {
				said = happened[0].Name
			}
		}
		return b, said
	}
	for _, c := range []struct {
		thread, move, said string
		squared, cone      bool
	}{
		{"1/2-14 NPT", "square", "square-to-which", false, false}, {"1/2-14 NPT", "square axis", "squared", true, false},
		{"1/2-14 NPT", "square cone", "squared-to-cone", true, true}, {"3/4-10 UNC-2A", "square", "squared", true, false},
		{"3/4-10 UNC-2A", "square axis", "squared", true, false}, {"3/4-10 UNC-2A", "square cone", "no-cone", false, false},
		{"3/4-10 UNC-2A", "taper 1/16", "no-taper-here", false, false}, {"1/2-14 NPT", "taper 1:16", "taper-set", false, false},
	} {
		if b, said := do(c.thread, c.move); said != c.said || b.Squared != c.squared || b.OnCone != c.cone {
			t.Errorf("%s, %s: %s, squared %v, to the cone %v", c.thread, c.move, said, b.Squared, b.OnCone)
		}
	}
	if e, err := Parse("taper 1:16", machine.Imperial); err != nil || e.Write(machine.Imperial) != "taper 1/16" {
		t.Errorf("%v %v", e, err)
	}
	for _, text := range []string{"taper", "taper 0.6", "taper 1/0", "taper x", "taper -1/16"} {
		if _, err := Parse(text, machine.Imperial); err == nil {
			t.Errorf("%q is read", text)
		}
	}
}
