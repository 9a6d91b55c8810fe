package bench

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

func do(t testing.TB, b Bench, lines ...string) Bench {
	t.Helper()
	for _, line := range lines {
		e, err := Parse(line, b.Job.System())
		if err != nil {
			t.Fatal(err)
		}
		b, _ = b.Step(e)
	}
	return b
}

// A thread that is begun keeps its gears: others cut another helix, and the groove is lost.
func TestGearsStayOnceAThreadIsBegun(t *testing.T) {
	right := do(t, ready(t), "stop")
	if again := do(t, right, "gears 40/32"); again.Lead != right.Lead {
		t.Errorf("the lead went from %v to %v", right.Lead, again.Lead)
	}
	// A scratch with wrong gears is what a scratch is for: they may still be changed.
	wrong := do(t, New(shippedJob(t, "adjusting-screw")), "dress", "key out", "feed off", "speed 70", "gears 40/32", "angle 29.5 tailstock", "height", "square", "gibs", "oil",
		"start", "touch", "zero cross", "zero compound",
		"cross out 0.2", "return", "cross to 0", "compound in 0.002", "close on 1", "run", "cross out 0.2", "open", "return", "stop")
	if len(wrong.Passes) == 0 {
		t.Fatal("nothing was cut")
	}
	if mended := do(t, wrong, "gears 32/40"); mended.Lead != right.Lead {
		t.Errorf("the lead is %v, want %v", mended.Lead, right.Lead)
	}
}

// ready is a bench set up for the adjusting screw, up to the first pass.
func ready(t testing.TB) Bench {
	return do(t, New(shippedJob(t, "adjusting-screw")), "dress", "key out", "feed off", "speed 70", "gears 32/40", "angle 29.5 tailstock", "height", "square", "gibs", "oil",
		"start", "touch", "zero cross", "zero compound", "cross out 0.2", "return", "cross to 0", "compound in 0.002", "close on 1", "run", "cross out 0.2", "open", "return")
}

// The pitch diameter of the bench is that of calc's groove, worked out from the dial
// moves alone: the passes by the slides' geometry, what they leave on by the series.
func TestPitchDiameterIsThatOfCalcsGroove(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 40 {
		b := ready(t)
		type move struct{ compound, straight calc.Length }
		moves := []move{{compound: 0.002}}
		for range 30 {
			cut := calc.Inches(float64(r.IntN(5)) / 1000)
			if r.IntN(3) == 0 {
				b, _ = b.Step(Event{Verb: "finish", X: cut.Times(2).Inches(), Has: true})
				moves = append(moves, move{straight: cut})
			} else {
				b, _ = b.Step(Event{Verb: "pass", X: cut.Inches(), Has: true})
				moves = append(moves, move{compound: cut})
			}
		}
		if len(b.Passes) != len(moves) {
			t.Fatalf("%d passes of %d, %v", len(b.Passes), len(moves), b.Mistakes)
		}
		const angle calc.Angle = 29.5
		set := make([]calc.ToolPass, len(moves))
		var at calc.ToolPass
		for i, m := range moves {
			at.Radial += m.straight + m.compound.Times(angle.Cos())
			at.Across += m.compound.Times(angle.Sin())
			set[i] = at
		}
		lag, before := b.Lag(), calc.Length(0)
		for i := range set {
			set[i].Radial -= (set[i].Radial - before).Times(lag)
			before = set[i].Radial
		}
		g, err := calc.NewGroove(b.Job.Tip, b.Job.Thread.Pitch, set)
		if err != nil {
			t.Fatal(err)
		}
		want, ok := g.PitchDiameter(calc.Outside, b.Job.Start)
		got, gotOK := b.PitchDiameter()
		if ok != gotOK || math.Abs((got-want).Inches()) > 1e-9 {
			t.Errorf("the bench has %v %v, calc %v %v", got, gotOK, want, ok)
		}
	}
}

// What a cut and its spring passes leave on is calc's closed form.
func TestSpringPassesLeaveTheClosedForm(t *testing.T) {
	b := ready(t)
	for range 40 { // take off what the first pass left
		b, _ = b.Step(Event{Verb: "spring"})
	}
	b = do(t, b, "pass 0.004")
	cut, _ := calc.RadialOfCompound(0.004, 29.5)
	for springs := range 6 {
		last := b.Passes[len(b.Passes)-1]
		want, err := calc.LeftOnAfterSprings(cut, b.Lag(), springs)
		if got := last.Set - last.Depth; err != nil || math.Abs((got-want).Inches()) > 1e-12 {
			t.Errorf("after %d spring passes %v is left, want %v (%v)", springs, got, want, err)
		}
		b, _ = b.Step(Event{Verb: "spring"})
	}
}

// The card of a job, followed move by move and finished by the fit, makes a part that
// fits: on the jobs that ship and on jobs of every size.
func TestThePlanMakesAPartThatFits(t *testing.T) {
	try := func(t *testing.T, j Job) {
		p, err := NewPlan(j, 29.5)
		if err != nil {
			t.Fatal(err)
		}
		if p.starts() > 1 { // the card itself goes from start to start
			b, _ := p.played()
			if b.Outcome == nil || b.Outcome.Verdict != Fits || len(b.Mistakes) > 0 {
				t.Errorf("%s: %+v %v", j.Thread, b.Outcome, b.Mistakes)
			}
			return
		}
		b := Play(j, false, p.Events())
		feed := calc.Length(0)
		for _, s := range p.Steps {
			if s.Kind == "finish" {
				feed = s.Feed
			}
		}
		if feed == 0 {
			feed = j.Lathe.Cross.Division
		}
		for i := 0; i < 60 && !b.Over; i++ {
			if n := len(b.Tests); n > 0 && b.Tests[n-1].Result != "no-start" && b.Tests[n-1].Result != "binds" {
				b, _ = b.Step(Event{Verb: "done"})
				break
			}
			events := []Event{{Verb: "finish", X: feed.Inches(), Has: true}, {Verb: "spring"}, {Verb: "spring"}}
			for _, e := range append(events, p.Try()...) {
				b, _ = b.Step(e)
			}
		}
		for _, m := range b.Mistakes {
			if m.Name != "chatter" && m.Name != "lost-count" { // a thin bar chatters whatever is done; the card books nothing
				t.Errorf("made %v", m)
			}
		}
		if b.Outcome == nil || b.Outcome.Verdict != Fits {
			t.Errorf("%s: %+v", j.Thread, b.Outcome)
		}
	}
	for _, name := range content.Shipped().JobNames() {
		t.Run(name, func(t *testing.T) {
			j := shippedJob(t, name)
			if name == "adjuster-sleeve" { // its bar is too thin on purpose: the card names one that would do
				p, err := NewPlan(j, 29.5)
				if err != nil || p.Passes() || !p.Chatters || p.BarWould <= j.Bar {
					t.Fatalf("%v, passes %v, chatters %v, a bar of %v would do", err, p.Passes(), p.Chatters, p.BarWould)
				}
				j.Bar = p.BarWould
				j.Reach = calc.Thou.Times(100)
			}
			try(t, j)
		})
	}
	for _, thread := range []string{"1/4-20 UNC-2A", "1/2-13 UNC-2A", "1/2-13 UNC-2B", "1-8 UNC-2A", "1-14 UNS-2A", "7/8-9 UNC-3A", "1 1/2-6 UNC-2B", "M10x1.5-6g", "M12x1.75-6H", "M30x2-6g", "M36x4-6H", "3/8-24 UNF-3B", "5/8-18 UNF-2B",
		"3/4-10 UNC-2A-LH", "1-8 UNC-2B-LH", "M12x1.75-6g-LH", "3/4-10 UNC-2A 2 STARTS", "1-12 UN-2B-LH 2 STARTS", "M20xPh3P1.5-6g"} {
		for _, own := range []machine.Lathe{machine.InchLathe, machine.MetricLathe} {
			t.Run(thread+" on "+own.Name, func(t *testing.T) {
				own.ScrewedNose = false // some of these must run back in reverse
				j, err := ParseJob(Usual(content.Job{Thread: thread}, own), own)
				if err != nil {
					t.Fatal(err)
				}
				try(t, j)
			})
		}
	}
}

// In a bore the slides feed out, and the dials count down.
func TestDialsCountDownInABore(t *testing.T) {
	b := do(t, New(shippedJob(t, "gland-nut")), "dress", "key out", "angle 29.5 headstock", "start", "touch", "zero cross", "zero compound", "cross in 0.2", "return", "cross to 0", "compound out 0.012")
	if got := b.CompoundReading(); !calc.Within(got.Inches(), 0.088, 1e-9) {
		t.Errorf("the compound dial reads %v, want 0.088", got)
	}
	if got := b.Depth(); !calc.Within(got.Inches(), 0.012*calc.Angle(29.5).Cos(), 1e-9) {
		t.Errorf("the tool is %v deep", got)
	}
}

// The half-nut closed late lands the tool beside its groove by the threads of the screw
// it was late, and on a whole dial of lines nowhere else than it should.
func TestALateHalfNutLandsBesideTheGroove(t *testing.T) {
	j := shippedJob(t, "valve-stem")
	p, err := NewPlan(j, 29.5)
	if err != nil {
		t.Fatal(err)
	}
	if want := []int{1, 3, 5, 7}; !slices.Equal(p.Marks, want) {
		t.Fatalf("marks %v, want %v", p.Marks, want)
	}
	b := Play(j, false, p.Events()[:26])
	for mark, beside := range map[string]float64{"1": 0, "3": 0, "2": 0.5 / 11, "8": 0.5 / 11} {
		c := do(t, b, "book compound 0.002", "start", "compound in 0.002", "cross to 0", "close on "+mark, "run")
		if c.cutting == nil {
			t.Fatalf("mark %s: no pass, %v", mark, c.Log[len(c.Log)-3:])
		}
		if got := math.Abs(c.cutting.Shift.Inches()); !calc.Within(got, beside, 1e-6) {
			t.Errorf("on mark %s the tool runs %v beside its groove, want %v", mark, got, beside)
		}
	}
}

func FuzzScript(f *testing.F) {
	f.Add([]byte("job adjusting-screw\nkey out\ncross out 0.2\n"))
	f.Add([]byte("# x\njob a\nhands real\ngears 32/40 x 20/30\nclose on 3\nnote é\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := ParseScript("f", text)
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		for _, system := range []machine.System{machine.Imperial, machine.Metric} {
			for _, line := range s.Lines {
				e, err := Parse(line.Text, system)
				if err != nil {
					continue
				}
				again, err := Parse(e.Write(system), system)
				if err != nil {
					t.Fatalf("%q is written as %q, which can't be read: %v", line.Text, e.Write(system), err)
				}
				if again.Write(system) != e.Write(system) {
					t.Fatalf("%q is written as %q and then as %q", line.Text, e.Write(system), again.Write(system))
				}
			}
		}
	})
}
