package bench

import (
	"slices"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// usualJob is a job with usual sizes on the inch lathe, its nose locked.
func usualJob(t testing.TB, w content.Job) Job {
	t.Helper()
	l := machine.InchLathe
	l.ScrewedNose = false
	j, err := ParseJob(Usual(w, l), l)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// The hand of a thread and the way of the tool leave one turn of the spindle; side and way
// one side for the compound's handle.
func TestHandAndWay(t *testing.T) {
	for _, c := range []struct {
		thread, towards, way string
		turn                 int
		swing                string
		groove               bool
	}{
		{"3/4-10 UNC-2A", "", Headstock, 1, Tailstock, false},
		{"3/4-10 UNC-2A", Headstock, Headstock, 1, Tailstock, false},
		{"3/4-10 UNC-2A", Tailstock, Tailstock, -1, Headstock, true},
		{"3/4-10 UNC-2A-LH", "", Tailstock, 1, Headstock, true},
		{"3/4-10 UNC-2A-LH", Headstock, Headstock, -1, Tailstock, false},
		{"1-8 UNC-2B", "", Headstock, 1, Headstock, false},
		{"1-8 UNC-2B-LH", "", Tailstock, 1, Tailstock, true},
		{"1-8 UNC-2B", Tailstock, Tailstock, -1, Tailstock, true},
	} {
		j := usualJob(t, content.Job{Thread: c.thread, Towards: c.towards})
		if j.Towards != c.way || j.CutTurn() != c.turn || j.Swing() != c.swing || j.FromGroove() != c.groove || j.InReverse() != (c.turn < 0) {
			t.Errorf("%s %s: towards %s, turn %d, handle %s, groove %v", c.thread, c.towards, j.Towards, j.CutTurn(), j.Swing(), j.FromGroove())
		}
	}
}

// The tumbler alone makes the hand, whichever way the spindle turns; both together make the
// way of the carriage.
func TestTheTumblerMakesTheHand(t *testing.T) {
	for _, c := range []struct {
		moves string
		hand  calc.Hand
		dir   float64
		cuts  bool
	}{
		{"start", calc.RightHand, 1, true},
		{"reverse", calc.RightHand, -1, false},
		{"tumbler left, start", calc.LeftHand, -1, true},
		{"tumbler left, reverse", calc.LeftHand, 1, false},
		{"tool over, reverse", calc.RightHand, -1, true},
		{"tool over, start", calc.RightHand, 1, false},
		{"tumbler left, tumbler right, tool over, tool up, start", calc.RightHand, 1, true},
		{"", calc.RightHand, 0, false},
	} {
		b := New(usualJob(t, content.Job{Thread: "3/4-10 UNC-2A"}))
		for _, move := range strings.Split("dress,key out,"+c.moves, ",") {
			if move = strings.TrimSpace(move); move != "" {
				b = do(t, b, move)
			}
		}
		if b.Hand() != c.hand || b.dir() != c.dir || b.Cutting() != c.cuts {
			t.Errorf("%q: %s, %v, cuts %v", c.moves, b.Hand(), b.dir(), b.Cutting())
		}
	}
}

// How deep it is free behind the thread: at a shank as thick as the blank there is no
// groove, at one as thin as the root there is.
func TestWhatLiesBehindTheThread(t *testing.T) {
	base := usualJob(t, content.Job{Thread: "3/4-10 UNC-2A-LH"})
	full, err := base.FullDepth()
	if err != nil {
		t.Fatal(err)
	}
	root := base.Start - full.Times(2)
	for _, c := range []struct {
		end         string
		shank       calc.Length
		plain, deep bool
	}{
		{Shoulder, 0, false, true}, {Jaws, 0, true, false},
		{Jaws, base.Start, true, false}, {Jaws, base.Start + 1, true, false}, {Shoulder, base.Start, true, false},
		{Jaws, root + 0.002, false, false}, {Jaws, root - 1e-9, false, true}, {Jaws, root - 0.1, false, true},
	} {
		j := base
		j.End, j.Shank = c.end, c.shank
		if j.plain() != c.plain || j.grooveIsDeep() != c.deep {
			t.Errorf("%s, shank %v: relief %v, plain %v, deep %v", c.end, c.shank, j.relief(), j.plain(), j.grooveIsDeep())
		}
		p, err := NewPlan(j, 29.5)
		if err != nil || p.NoGroove == c.deep || p.Passes() != c.deep {
			t.Errorf("%s, shank %v: %v, no groove %v, passes %v", c.end, c.shank, err, p.NoGroove, p.Passes())
		}
	}
	bore := usualJob(t, content.Job{Thread: "1-8 UNC-2B-LH"})
	if bore.plain() || !bore.grooveIsDeep() {
		t.Error("behind a bore that goes through there is only air")
	}
	bore.Shank = bore.Start
	if !bore.plain() {
		t.Error("a bore as wide as behind the thread has no groove there")
	}
}

// Away from the shoulder on a screwed nose is refused, with the nose locked it is cut.
func TestReverseWantsALockedNose(t *testing.T) {
	j := usualJob(t, content.Job{Thread: "3/4-10 UNC-2A", Towards: Tailstock})
	if p, err := NewPlan(j, 29.5); err != nil || !p.Passes() || p.Fastest != 0 {
		t.Errorf("locked: %v, passes %v, fastest %v", err, p.Passes(), p.Fastest)
	}
	j.Lathe.ScrewedNose = true
	if p, err := NewPlan(j, 29.5); err != nil || p.Passes() || !p.Unscrews {
		t.Errorf("screwed: %v, passes %v, unscrews %v", err, p.Passes(), p.Unscrews)
	}
	b := do(t, New(j), "dress", "key out", "tool over", "reverse")
	if !b.Over || !b.made(mistakeChuckUnscrewed) {
		t.Errorf("over %v, %v", b.Over, mistakesOf(b))
	}
}

// A pass that ends before the end that it runs to is short, whichever end that is.
func TestShortAtEitherEnd(t *testing.T) {
	b := New(usualJob(t, content.Job{Thread: "3/4-10 UNC-2A"}))
	length := b.Job.Length
	for _, c := range []struct {
		way  float64
		to   calc.Length
		want calc.Length
	}{
		{1, length, 0}, {1, length - 0.075, 0}, {1, length - 0.076, 0.076}, {-1, 0, 0}, {-1, -0.05, 0}, {-1, 0.075, 0}, {-1, 0.076, 0.076}, {-1, length, length},
	} {
		if got := b.shortBy(Pass{Way: c.way, To: c.to}); !calc.Within(got.Inches(), c.want.Inches(), 1e-9) {
			t.Errorf("way %v to %v: short by %v, want %v", c.way, c.to, got, c.want)
		}
	}
}

// A repeated pass closes on the next mark that finds its groove, never on another.
func TestARepeatedPassTakesTheNextMark(t *testing.T) {
	for _, name := range []string{"valve-stem", "left-hand-gland-screw", "two-start-adjusting-nut"} {
		j := shippedJob(t, name)
		j.Surprises = nil
		p, err := NewPlan(j, 29.5)
		if err != nil {
			t.Fatal(err)
		}
		b := Play(j, false, p.Events())
		marks := map[int]bool{}
		for _, pass := range b.Passes {
			marks[pass.Mark] = true
			if good := p.goodMarks(pass.Start); !slices.Contains(good, pass.Mark) || pass.Shift != 0 {
				t.Errorf("%s, pass %d of start %d: mark %d, %v beside; good are %v", name, pass.N, pass.Start, pass.Mark, pass.Shift, good)
			}
		}
		if len(marks) < 2 {
			t.Errorf("%s: it waits for marks %v alone", name, marks)
		}
	}
}

// goodMarks are the marks that a card gives for a start.
func (p Plan) goodMarks(start int) []int {
	if p.IndexBy == ByDial {
		return p.StartMarks[start]
	}
	return p.Marks
}
