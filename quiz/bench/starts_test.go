package bench

import (
	"fmt"
	"slices"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// The marks of each start, as the lesson works them out; none where the dial can't help.
func TestTheMarksOfEachStart(t *testing.T) {
	for _, c := range []struct {
		thread, want string
	}{
		{"1-10 UNS-2A 2 STARTS", "[[1 3 5 7] [2 4 6 8]]"}, // five pitches from mark to mark
		{"1-8 UNC-2A 2 STARTS", "[]"},                     // four: every mark meets the same start
		{"1-12 UN-2A 2 STARTS", "[]"},                     // six
		{"3/4-16 UNF-2A 2 STARTS", "[]"},                  // any moment will do
		{"1-12 UN-2A 3 STARTS", "[]"},                     // two leads
		{"1-14 UNS-2A 2 STARTS", "[[1 3 5 7] [2 4 6 8]]"},
		{"7/8-9 UNC-2A 2 STARTS", "[[1 5] [3 7]]"}, // nine pitches over two marks
		{"7/8-9 UNC-2A", "[[1 3 5 7]]"},
	} {
		j := usualJob(t, content.Job{Thread: c.thread})
		if got := fmt.Sprint(j.startMarks()); got != c.want {
			t.Errorf("%s: %s, want %s", c.thread, got, c.want)
		}
	}
}

// Which start the tool runs in, and how far beside its groove.
func TestRunsIn(t *testing.T) {
	j := usualJob(t, content.Job{Thread: "1-12 UN-2A 3 STARTS"})
	pitch := j.Thread.Pitch
	for _, c := range []struct {
		pitches, beside float64
		start           int
	}{
		{0, 0, 0}, {1, 0, 1}, {2, 0, 2}, {3, 0, 0}, {-1, 0, 2}, {-3, 0, 0}, {0.4, 0.4, 0}, {0.5, 0.5, 0}, {0.6, -0.4, 1}, {2.6, -0.4, 0}, {7.25, 0.25, 1},
	} {
		b := New(j)
		b.Lead, b.hasFirst = j.Thread.Lead(), true
		b.first = b.runsAt()
		b.TurnedOn = pitch.Times(c.pitches)
		start, beside := b.runsIn()
		if start != c.start || !calc.Within(beside.Over(pitch), c.beside, 1e-6) {
			t.Errorf("%v pitches on: start %d, %v beside, want %d and %v", c.pitches, start, beside.Over(pitch), c.start, c.beside)
		}
	}
	b := New(j)
	b.Lead, b.hasFirst, b.LeverLeft = j.Thread.Lead(), true, true
	b.TurnedOn = pitch
	if start, beside := b.runsIn(); start != 0 || beside != 0 {
		t.Errorf("the other hand runs in start %d, %v beside", start, beside)
	}
}

// A dog in the next slot, or a marked gear with teeth enough, brings the next start; a gear
// whose teeth the starts do not share evenly does not.
func TestTurningTheWorkOn(t *testing.T) {
	w := content.Job{Thread: "1-12 UN-2A 3 STARTS"}
	for _, c := range []struct {
		hold, gears, said string
	}{
		{Chuck, "gears 30/20 x 64/48", "indexed-gear"}, {Chuck, "gears 64/48 x 30/20", "no-index"}, {Centres, "gears 64/48 x 30/20", "indexed-slot"}, {Chuck, "", "no-index"},
	} {
		w.Hold, w.End = c.hold, Jaws
		b := New(usualJob(t, w))
		if c.gears != "" {
			b = do(t, b, c.gears)
		}
		b = do(t, b, "index")
		last := b.Log[len(b.Log)-1].Happened
		if len(last) != 1 || last[0].Name != c.said || (b.TurnedOn > 0) != (c.said != "no-index") {
			t.Errorf("%s %q: %v, turned on %v", c.hold, c.gears, last, b.TurnedOn)
		}
	}
	if b := do(t, New(usualJob(t, content.Job{Thread: "3/4-10 UNC-2A"})), "index"); b.TurnedOn != 0 || b.Log[0].Happened[0].Name != "one-start" {
		t.Errorf("%v", b.Log[0].Happened)
	}
	if b := do(t, New(usualJob(t, w)), "dress", "key out", "start", "index"); b.TurnedOn != 0 || !b.made(mistakeHandsInTurningLathe) {
		t.Errorf("on a turning lathe: %v", mistakesOf(b))
	}
}

// Each way from start to start cuts every start evenly, to the same size.
func TestEveryWayCutsEveryStart(t *testing.T) {
	for _, c := range []struct {
		w    content.Job
		l    machine.Lathe
		want string
	}{
		{content.Job{Thread: "3/4-10 UNC-2A 2 STARTS"}, machine.InchLathe, ByDial},
		{content.Job{Thread: "3/4-16 UNF-2A 2 STARTS"}, machine.InchLathe, ByCompound},
		{content.Job{Thread: "3/4-16 UNF-2A-LH 2 STARTS"}, machine.InchLathe, ByCompound},
	} {
		p := planOf(t, c.w, c.l)
		if p.IndexBy != c.want || !p.Passes() {
			t.Errorf("%s: by %q, passes %v", c.w.Thread, p.IndexBy, p.Passes())
			continue
		}
		b, _ := p.played()
		var sizes []calc.Length
		for start := range b.starts() {
			e, ok := b.pitchOf(start, b.Job.nearStart())
			if !ok {
				t.Errorf("%s: start %d is not cut", c.w.Thread, start+1)
			}
			sizes = append(sizes, e)
		}
		if spread := slices.Max(sizes) - slices.Min(sizes); b.Outcome.Verdict != Fits || spread > 0.0005 {
			t.Errorf("%s: %v, sizes %v", c.w.Thread, b.Outcome, sizes)
		}
	}
	turned := planOf(t, content.Job{Thread: "3/4-16 UNF-2A 2 STARTS"}, machine.InchLathe)
	turned.IndexBy, turned.Steps, turned.Scale = ByTurning, nil, 29.5
	turned.Trains = []calc.Train{{Drivers: []int{30, 24}, Driven: []int{20, 36}}}
	turned.Travel, _ = calc.CompoundTravel(turned.Depth, 29.5)
	turned.cut(29.5)
	if b, _ := turned.played(); !turned.Passes() || b.Outcome.Verdict != Fits || b.TurnedOn == 0 {
		t.Errorf("by a marked gear: passes %v, %+v, turned on %v", turned.Passes(), b.Outcome, b.TurnedOn)
	}
}

// What came of gears that were left wrong.
func TestTheFaultOfALatheLeftSetUp(t *testing.T) {
	setUp := []string{"dress", "key out", "feed off", "speed 70", "angle 29.5 tailstock", "height", "square", "gibs", "oil"}
	touch := []string{"start", "touch", "zero cross", "zero compound", "cross out 0.2", "return"}
	scratch := []string{"cross to 0", "compound in 0.002", "close on 1", "run", "cross out 0.2", "open", "return"}
	for _, c := range []struct {
		name  string
		moves []string
		want  string
	}{
		{"counted, and set anew", slices.Concat(setUp, touch, scratch, []string{"stop", "count", "gears 32/52", "start"}, scratch), "fault-found"},
		{"set at once", slices.Concat(setUp, []string{"gears 32/52"}, touch, scratch), "fault-unseen"},
		{"cut deep", slices.Concat(setUp, touch, scratch, []string{"pass 0.006", "pass 0.006"}), "fault-missed"},
		{"counted, and cut all the same", slices.Concat(setUp, touch, scratch, []string{"stop", "count", "start", "pass 0.006", "pass 0.006"}), "fault-missed"},
		{"nothing done", nil, "fault-missed"},
	} {
		if got := do(t, New(shippedJob(t, "lathe-left-set-up")), c.moves...).fault(); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	b := New(shippedJob(t, "lathe-left-set-up"))
	if missing := b.Missing(); slices.Contains(missing, "gears") {
		t.Error("a hint to the gears would give the fault away")
	}
	if got := New(shippedJob(t, "valve-stem")).fault(); got != "" {
		t.Errorf("a lathe without a fault: %q", got)
	}
}
