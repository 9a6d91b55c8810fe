package bench

import (
	"scratchpass/calc"
	"slices"
	"strings"
	"testing"
)

// said are the names of what happened in the whole log.
func saidOf(b Bench) (names []string) {
	for _, e := range b.Log {
		for _, h := range e.Happened {
			names = append(names, h.Name)
		}
	}
	return names
}

// A speed that leaves the hands less than the card asks for is said once, before the first
// pass at it; one that leaves enough is not, and neither is one that was said.
func TestSpeedThatLeavesTooLittleTime(t *testing.T) {
	for _, row := range []struct {
		job, speeds string // of the lathe, one after the other, each started once
		want        int    // how often it is said
	}{
		{"adjusting-screw", "70", 0},
		{"adjusting-screw", "180", 1},
		{"adjusting-screw", "180 180", 1},
		{"adjusting-screw", "180 70 180", 1},
		{"adjusting-screw", "180 290", 2},
		{"gland-nut", "70", 0},
		{"gland-nut", "110", 1},
		{"gland-nut", "180", 1},
	} {
		b := do(t, New(shippedJob(t, row.job)), "key out")
		for _, rpm := range strings.Fields(row.speeds) {
			b = do(t, b, "speed "+rpm, "start", "stop")
		}
		n := 0
		for _, name := range saidOf(b) {
			if name == "short-of-time" {
				n++
			}
		}
		if n != row.want {
			t.Errorf("%s at %s rpm: said %d times, want %d", row.job, row.speeds, n, row.want)
		}
	}
	// The figures are those of the card.
	b := do(t, New(shippedJob(t, "gland-nut")), "key out", "speed 180", "start")
	happened := b.Log[2].Happened
	h := happened[slices.IndexFunc(happened, func(h Happening) bool { return h.Name == "short-of-time" })]
	plan, err := NewPlan(b.Job, calc.Degrees(29.5))
	if err != nil {
		t.Fatal(err)
	}
	if got := h.Facts; got["speed"] != "180" || got["seconds"] != "1.0" || got["hands"] != "2" || got["would"] != "70" || plan.RPM != 70 {
		t.Errorf("%v, the card says %d rpm", got, plan.RPM)
	}
}

// Once passes are cut the next may be a whole one, which starts the spindle: then it is said
// when the speed is set.
func TestSpeedChangedBetweenPasses(t *testing.T) {
	b := do(t, ready(t), "stop", "speed 180")
	last := b.Log[len(b.Log)-1].Happened
	if len(last) != 2 || last[1].Name != "short-of-time" {
		t.Fatalf("%v", last)
	}
	b = do(t, b, "pass 0.003")
	for _, h := range b.Log[len(b.Log)-1].Happened {
		if h.Name == "short-of-time" {
			t.Error("said twice")
		}
	}
	// What was left is measured at each pass, by the speed it had; the closest is the last.
	if len(b.Margins) != 2 || b.Margins[0].RPM != 70 || b.Margins[1].RPM != 180 {
		t.Fatalf("%+v", b.Margins)
	}
	closest, ok := b.Closest()
	if !ok || closest.Pass != 2 || closest.Seconds >= b.Margins[0].Seconds {
		t.Errorf("%+v of %+v", closest, b.Margins)
	}
	// Two moves of the hand go by between the end of the thread and the open half-nut.
	way := b.Job.Free() - b.Job.Thread.Lead().Times(180.0/60*2*HandSeconds)
	if off := closest.Left - way; off > 0.002 || off < -0.002 {
		t.Errorf("left %v, want %v", closest.Left, way)
	}
}

// A pass that ends over the thread was not at its end; one in air counts as a pass in air.
func TestMarginOnlyAtTheEnd(t *testing.T) {
	one := ready(t)
	early := do(t, one, "compound in 0.002", "cross to 0", "close on 1", "wait 0.5", "cross out 0.2", "open")
	if len(early.Margins) != 1 || len(one.Margins) != 1 {
		t.Errorf("opened early: %+v", early.Margins)
	}
	air := do(t, New(one.Job), "key out", "feed off", "speed 70", "gears 32/40", "start", "close on 1", "run", "open")
	if len(air.Margins) != 1 || air.Margins[0].Pass != 0 || !slices.Contains(saidOf(air), "opened") {
		t.Errorf("in air: %+v", air.Margins)
	}
	if _, ok := New(air.Job).Closest(); ok {
		t.Error("a closest of none")
	}
}
