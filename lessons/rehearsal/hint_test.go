package rehearsal

import (
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/bench"
)

// In every phase of a job a hint names the next sensible thing to look at, and has words.
func TestHintInEveryPhase(t *testing.T) {
	setUp := []string{"dress", "key out", "feed off", "speed 70", "gears 32/40", "angle 29.5 tailstock", "height", "square", "gibs", "oil"}
	touched := slices.Concat(setUp, []string{"start", "touch", "zero cross", "zero compound"})
	ready := slices.Concat(touched, []string{"cross out 0.2", "return", "cross to 0", "compound in 0.002"})
	one := slices.Concat(ready, []string{"close on 1", "run", "cross out 0.2", "open", "return"})
	tryIt := slices.Concat(one, []string{"stop", "count"})
	for _, row := range []struct {
		moves []string
		want  string
	}{
		// Set-up.
		{nil, "missing"},
		{setUp[:4], "missing"},
		{[]string{"dress", "key out", "start"}, "missing-turning"},
		// Touch-off.
		{setUp, "touch-start"},
		{touched[:11], "touch-up"},
		{touched[:12], "touch"},
		{touched[:13], "touch"},
		{touched, "touched-out"},
		{ready[:15], "return"},
		{ready[:16], "first"},
		{slices.Concat(ready[:16], []string{"stop"}), "power"},
		// Passes.
		{ready, "start"},
		{slices.Concat(ready, []string{"close on 1"}), "open"},
		{slices.Concat(ready, []string{"close on 1", "wait 8"}), "thread"},
		{slices.Concat(ready, []string{"close on 1", "run"}), "end"},
		{slices.Concat(ready, []string{"close on 1", "run", "cross out 0.2"}), "end-out"},
		{slices.Concat(ready, []string{"close on 1", "run", "cross out 0.2", "open"}), "return"},
		{one, "count"},
		{slices.Concat(one, []string{"stop"}), "count"},
		{slices.Concat(tryIt, []string{"start"}), "feed"},
		{slices.Concat(tryIt, []string{"start", "cross to 0"}), "start"},
		// Trying.
		{tryIt, "chips"},
		{slices.Concat(tryIt, []string{"clean hook"}), "standing"},
		{slices.Concat(tryIt, []string{"clean hook", "test mate"}), "standing"},
		// After scrap.
		{slices.Concat(touched[:12], []string{"compound in 0.02"}), "scrap"},
	} {
		hint(t, "adjusting-screw", row.moves, row.want)
	}
	// Where the compound is left: a spring pass, a try, then straight in.
	var deep []string
	for range 10 {
		deep = append(deep, "pass 0.006")
	}
	deep = append(deep, "pass 0.007") // to 0.069 in, where the card leaves it
	deep = slices.Concat(tryIt, []string{"clean hook", "start"}, deep)
	hint(t, "adjusting-screw", deep[:len(deep)-3], "feed")
	hint(t, "adjusting-screw", deep, "spring")
	hint(t, "adjusting-screw", append(slices.Clone(deep), "spring"), "try")
	hint(t, "adjusting-screw", append(slices.Clone(deep), "spring", "stop", "clean hook"), "try-now")
	hint(t, "adjusting-screw", append(slices.Clone(deep), "spring", "stop", "clean hook", "test mate"), "straight-in")
	hint(t, "adjusting-screw", append(slices.Clone(deep), "spring", "stop", "clean hook", "test mate", "start"), "straight-in")
	hint(t, "adjusting-screw", append(slices.Clone(deep), "spring", "stop", "clean hook", "test mate", "start", "finish 0.001"), "spring")
	// A compound on the wrong side is not set, and a lathe that was left has its gears unproved.
	swung := slices.Clone(setUp)
	swung[5] = "angle 29.5 headstock"
	hint(t, "adjusting-screw", swung, "missing")
	left := slices.Concat(setUp[:4], setUp[5:], one[len(setUp):])
	hint(t, "lathe-left-set-up", append(left, "stop", "count"), "count-other")
	// The half-nut stays closed where no mark finds the thread.
	metric := []string{"dress", "key out", "feed off", "speed 110"}
	hint(t, "pump-stud", metric, "missing")
}

// hint wants a hint after some moves.
func hint(t *testing.T, job string, moves []string, want string) {
	t.Helper()
	s, _, r := atBench(t, job)
	var err error
	if r.words, err = s.Library.Bench(); err != nil {
		t.Fatal(err)
	}
	for _, line := range moves {
		e, err := bench.Parse(line, r.Bench.Job.System())
		if err != nil {
			t.Fatal(err)
		}
		r.Bench, _ = r.Bench.Step(e)
	}
	if got := nextLook(r.Bench); got != want {
		t.Errorf("%s after %v: %s, want %s", job, moves[max(0, len(moves)-3):], got, want)
	}
	if said := s.hintAtTheBench(r); said == "" || strings.Contains(said, "${") {
		t.Errorf("%s: %q", want, said)
	}
}

// Over every run that ships, a hint has words at each move: no phase is left out.
func TestHintsOverWholeRuns(t *testing.T) {
	said := map[string]bool{}
	for _, run := range []string{"good-outside", "good-inside", "good-metric-on-inch", "wrong-line", "lost-count"} {
		script := script(t, run)
		s, _, r := atBench(t, script.Job)
		words, err := content.Shipped().Bench()
		if err != nil {
			t.Fatal(err)
		}
		r.words = words
		for _, line := range script.Lines {
			if look := nextLook(r.Bench); s.hintAtTheBench(r) == "" {
				t.Fatalf("%s before %s: no words for %s", run, line.Text, look)
			} else {
				said[look] = true
			}
			e, err := bench.Parse(line.Text, r.Bench.Job.System())
			if err != nil {
				t.Fatal(err)
			}
			r.Bench, _ = r.Bench.Step(e)
		}
	}
	for _, want := range []string{"fits", "start-closed", "reverse", "back", "end-closed", "doubt", "scrap", "chips"} {
		if !said[want] {
			t.Errorf("%s was never said", want)
		}
	}
}

// A compound on the wrong side is named; at the touch, picture and hint agree; after going on with
// a rehearsal a hint does not offer to take back what can't be.
func TestHintsThatFollowTheBench(t *testing.T) {
	setUp := []string{"dress", "key out", "feed off", "speed 70", "gears 32/40", "angle 29.5 headstock"}
	touch := []string{"height", "square", "gibs", "oil", "start", "touch", "zero cross", "zero compound"}
	for _, c := range []struct {
		moves []string
		want  string
	}{
		{setUp, "towards the tailstock"},
		{slices.Concat(setUp, touch), "towards the tailstock"},
		{slices.Concat(setUp[:5], []string{"angle 29.5 tailstock"}, touch), "just touches"},
		{slices.Concat(setUp[:5], []string{"angle 29.5 tailstock"}, touch[:6], []string{"compound in 0.02"}), "can't take that back"},
	} {
		s, _, r := atBench(t, "adjusting-screw")
		var err error
		if r.words, err = s.Library.Bench(); err != nil {
			t.Fatal(err)
		}
		for _, line := range c.moves {
			e, err := bench.Parse(line, r.Bench.Job.System())
			if err != nil {
				t.Fatal(err)
			}
			r.Bench, _ = r.Bench.Step(e)
		}
		if said := s.hintAtTheBench(r); !strings.Contains(said, c.want) {
			t.Errorf("after %v: %q", c.moves, said)
		}
		if d, err := s.section(r.Bench); err != nil || c.want == "just touches" && !strings.Contains(d.Twin, "just touches") {
			t.Errorf("%v: %q", err, d.Twin)
		}
	}
}

// A thread of a wrong lead is drawn as it is cut, with its own lines apart.
func TestTheGrooveOfAWrongLead(t *testing.T) {
	s, _, r := atBench(t, "adjusting-screw")
	for _, line := range strings.Split("dress, key out, feed off, speed 70, gears 32/48, angle 29.5 tailstock, height, square, gibs, oil, start, touch, zero cross, zero compound, cross out 0.2, return, cross to 0, compound in 0.002, close on 1, run, cross out 0.2, open, return", ", ") {
		e, err := bench.Parse(line, r.Bench.Job.System())
		if err != nil {
			t.Fatal(err)
		}
		r.Bench, _ = r.Bench.Step(e)
	}
	if d, err := s.section(r.Bench); err != nil || strings.Contains(d.Twin, "0.0000 in deep") || !strings.Contains(d.Twin, "one pitch is 0.0833 in") {
		t.Errorf("%v: %q", err, d.Twin)
	}
}
