package bench

import (
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
)

// anyEvent is an event that someone might type, good or bad.
func anyEvent(r *rand.Rand, b Bench) Event {
	offers := b.Offers()
	verbs := Verbs()
	for {
		text := verbs[r.IntN(len(verbs))]
		if len(offers) > 0 && r.IntN(3) > 0 {
			text = offers[r.IntN(len(offers))].Text
		}
		for _, figure := range []string{"", " 1", " 0.005", " 0.2", " 70", " 32/40", " 10 TPI", " in 0.2", " out 0.2", " to 0", " out 0.05", " in 0.002", " on 1", " on 3", " cross", " compound 0.01", " hook", " go", " off", " out"} {
			if r.IntN(4) > 0 {
				continue
			}
			if e, err := Parse(text+figure, b.Job.System()); err == nil {
				return e
			}
		}
	}
}

// No list of events panics or breaks what must hold: metal never comes back, a slide
// agrees with its dial within the play, a closed half-nut keeps its phase, time does
// not run back, and what is over stays over.
func TestWhateverIsDoneTheBenchHolds(t *testing.T) {
	words, err := content.Shipped().Bench()
	if err != nil {
		t.Fatal(err)
	}
	lists := 400
	if testing.Short() {
		lists = 60
	}
	names := content.Shipped().JobNames()
	ends := map[string]int{}
	for seed := range lists {
		r := rand.New(rand.NewPCG(uint64(seed), 99))
		j := shippedJob(t, names[seed%len(names)])
		b := New(j)
		if seed%2 == 0 { // half of them begin with a good set-up, so that they come further
			p, err := NewPlan(j, 29.5)
			if err != nil {
				t.Fatal(err)
			}
			moves := p.Events()
			b = Play(j, false, moves[:min(20+r.IntN(20), len(moves))])
		}
		b.Live = seed%5 == 0
		area := 0.0
		for range 200 {
			e := anyEvent(r, b)
			before := b
			next, happened := b.Step(e)
			if !reflect.DeepEqual(before, b) {
				t.Fatalf("seed %d: %s changed the bench it came from", seed, e.Write(j.System()))
			}
			for _, h := range happened {
				if text := h.Text(words); text == "" || strings.Contains(text, "${") {
					t.Fatalf("seed %d: %s: %q says %q", seed, e.Write(j.System()), h.Name, text)
				}
			}
			b = next
			for _, s := range []calc.Slide{b.Cross, b.Compound} {
				if l := s.Loose(); l < -1e-9 || l > s.Play+1e-9 {
					t.Fatalf("seed %d: after %s a slide is loose by %v of %v", seed, e.Write(j.System()), l, s.Play)
				}
			}
			if b.Nut && before.Nut && math.Abs((b.phase()-before.phase()).Inches()) > 1e-9 {
				t.Fatalf("seed %d: %s moved the carriage along its screw", seed, e.Write(j.System()))
			}
			if b.Clock < before.Clock || before.Over && !b.Over || len(b.Passes) < len(before.Passes) {
				t.Fatalf("seed %d: %s turned something back", seed, e.Write(j.System()))
			}
			if g, err := b.Groove(j.Thread.Pitch); err == nil {
				if a := g.Area(); a < area-1e-12 {
					t.Fatalf("seed %d: after %s there is metal again: %v, before %v", seed, e.Write(j.System()), a, area)
				} else {
					area = a
				}
			}
		}
		if b.Outcome != nil {
			ends[string(b.Outcome.Verdict)]++
		}
		if again := Play(j, b.Live, eventsOf(b)); seed%2 == 1 && !reflect.DeepEqual(again, b) {
			t.Fatalf("seed %d: played again, the log gives another bench: %v s and not %v, %d passes and not %d", seed, again.Clock, b.Clock, len(again.Passes), len(b.Passes))
		}
	}
	if len(ends) == 0 {
		t.Error("no list came to an end")
	}
	t.Log(ends)
}

func eventsOf(b Bench) []Event {
	events := make([]Event, len(b.Log))
	for i, e := range b.Log {
		events[i] = e.Event
	}
	return events
}
