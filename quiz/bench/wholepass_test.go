package bench

import (
	"slices"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// played makes moves at a shipped job's bench, from a set-up and one pass by hand on.
func played(t *testing.T, moves ...string) Bench {
	t.Helper()
	return playedFrom(t, `dress, key out, feed off, speed 70, gears 32/40, angle 29.5 tailstock, height, square, gibs, oil, start, touch, zero cross, zero compound, cross out 0.2, return,
		cross to 0, compound in 0.002, close on 1, run, cross out 0.2, open, return`, moves...)
}

func playedFrom(t *testing.T, setUp string, moves ...string) Bench {
	t.Helper()
	b := New(shippedJob(t, "adjusting-screw"))
	for _, text := range append(strings.Split(setUp, ","), moves...) {
		e, err := Parse(strings.TrimSpace(text), machine.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		b, _ = b.Step(e)
	}
	return b
}

func mistakesOf(b Bench) (names []string) {
	for _, m := range b.Mistakes {
		names = append(names, string(m.Name))
	}
	return names
}

// A move that the slide can't make is no way of taking the tool out, nor is a small way
// back of a dial: whole passes withdraw as the tool was last taken clear.
func TestWhatIsNoWithdrawal(t *testing.T) {
	for _, moves := range [][]string{
		{"cross out 100", "pass 0.005"},
		{"cross to 0", "cross in 0.002", "cross to 0", "cross out 0.2", "pass 0.005"},
		{"cross to 0", "cross out 0.002", "cross in 0.002", "pass 0.005"},
	} {
		b := played(t, moves...)
		if got := mistakesOf(b); len(got) > 0 || len(b.Passes) != 2 {
			t.Errorf("%q: %v after %d passes", moves, got, len(b.Passes))
		}
	}
}

// A whole pass whose cut the slide can't make cuts nothing and moves nothing.
func TestAWholePassIsAllOrNone(t *testing.T) {
	before := played(t)
	for _, move := range []string{"pass 50", "finish 50", "pass 1.5"} {
		after := played(t, move)
		if len(after.Passes) != 1 || after.Cross != before.Cross || after.Compound != before.Compound || after.Z != before.Z || after.Clock != before.Clock {
			t.Errorf("%s: %d passes, cross %v", move, len(after.Passes), after.Cross)
		}
		if said := after.Log[len(after.Log)-1].Happened; len(said) != 1 || said[0].Name != "too-far" {
			t.Errorf("%s: %v", move, said)
		}
	}
}

// After new gears the next pass is a first one again: made by hand, on any mark.
func TestNewGearsWantAPassByHand(t *testing.T) {
	wrong := `dress, key out, feed off, speed 70, gears 40/32, angle 29.5 tailstock, height, square, gibs, oil, start, touch, zero cross, zero compound, cross out 0.2, return,
		cross to 0, compound in 0.002, close on 1, run, cross out 0.2, open, return, stop, count, gears 32/40, start`
	b := playedFrom(t, wrong, "pass 0.003")
	if said := b.Log[len(b.Log)-1].Happened; len(b.Passes) != 1 || len(said) != 1 || said[0].Name != "by-hand-first" {
		t.Errorf("%d passes, %v", len(b.Passes), said)
	}
	b = playedFrom(t, wrong, "cross to 0", "compound in 0.002", "close on 1", "run", "cross out 0.2", "open", "return", "pass 0.003", "pass 0.003")
	if got := mistakesOf(b); len(got) > 0 || len(b.Passes) != 4 {
		t.Errorf("%v after %d passes", got, len(b.Passes))
	}
}

// How the tool stood while it cut decides, not how it stands at the end.
func TestALeaningThreadStaysOne(t *testing.T) {
	setUp := `dress, key out, feed off, speed 70, gears 32/40, angle 29.5 tailstock, gibs, oil, start, touch, zero cross, zero compound, cross out 0.2, return,
		cross to 0, compound in 0.002, close on 1, run, cross out 0.2, open, return`
	cuts := slices.Repeat([]string{"pass 0.004"}, 5)
	b := playedFrom(t, setUp, slices.Concat(cuts, []string{"stop", "square", "height", "done"})...)
	if b.Outcome == nil || !slices.Contains(b.Outcome.Reasons, "leans") || !slices.Contains(b.Outcome.Reasons, "off-centre") {
		t.Errorf("%+v", b.Outcome)
	}
	b = playedFrom(t, setUp, slices.Concat([]string{"stop", "square", "height", "start"}, cuts, []string{"stop", "done"})...)
	if b.Outcome == nil || slices.Contains(b.Outcome.Reasons, "leans") || slices.Contains(b.Outcome.Reasons, "off-centre") {
		t.Errorf("set right after the scratch: %+v", b.Outcome)
	}
}

// A spindle that is reversed too late has run into the shoulder, and nothing comes after.
func TestNothingAfterTheCrash(t *testing.T) {
	b := played(t, "cross to 0", "close on 1")
	for b.Left() > b.Lead.Times(0.2) {
		b, _ = b.Step(Event{Verb: "wait", X: 0.1, Has: true})
	}
	b, _ = b.Step(Event{Verb: "reverse"})
	if got := mistakesOf(b); !b.Over || !slices.Contains(got, "hit-shoulder") || slices.Contains(got, "reversed-while-running") || slices.Contains(got, "chuck-unscrewed") || b.Turn != 0 {
		t.Errorf("%v, turning %d", got, b.Turn)
	}
}

// What a single move does wrong is said each time it is made.
func TestAnActIsSaidAgain(t *testing.T) {
	b := playedFrom(t, "dress, key out, speed 70, start", "close on 1", "close on 1")
	for _, entry := range b.Log[len(b.Log)-2:] {
		if len(entry.Happened) != 1 || entry.Happened[0].Name != "mistake-feed-left-in" {
			t.Errorf("%v: %v", entry.Event, entry.Happened)
		}
	}
	if got := mistakesOf(b); len(got) != 1 {
		t.Errorf("counted %v", got)
	}
}

// A dial that was set to zero away from the work is still to be set, and a pass in the air
// says that it cuts nothing.
func TestZeroAwayFromTheWork(t *testing.T) {
	b := playedFrom(t, "dress, key out, feed off, speed 70, gears 32/40, angle 29.5 tailstock, height, square, gibs, oil, zero cross, zero compound, start, touch")
	if b.CrossReading() == 0 {
		t.Error("the dial reads zero at first touch without having been set")
	}
	if missing := b.Missing(); !slices.Contains(missing, "zero") {
		t.Errorf("missing %v", missing)
	}
	b = playedFrom(t, "dress, key out, feed off, speed 70, gears 32/40, angle 29.5 tailstock, height, square, gibs, oil, zero cross, zero compound, start, return, close on 1, run")
	if said := b.Log[len(b.Log)-1].Happened; len(said) == 0 || said[0].Name != "runs-clear" {
		t.Errorf("%v", said)
	}
	b = played(t)
	if missing := b.Missing(); len(missing) > 0 {
		t.Errorf("after a good set-up: %v", missing)
	}
}

// In a small bore a tool that stands as far back as it can is clear, at full depth too.
func TestClearInASmallBore(t *testing.T) {
	j, err := ParseJob(Usual(content.Job{Thread: "1/2-20 UNF-2B"}, machine.InchLathe), machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPlan(j, 29.5)
	if err != nil {
		t.Fatal(err)
	}
	b := Play(j, false, p.Events())
	if got := mistakesOf(b); !b.Clear() || slices.Contains(got, "hit-far-wall") || len(b.Tests) != 1 {
		t.Errorf("clear %v at %v with room %v, %v", b.Clear(), b.Depth(), j.Room(), got)
	}
}

// Between centres there is no chuck key.
func TestNoKeyBetweenCentres(t *testing.T) {
	b := New(shippedJob(t, "pump-stud"))
	for _, verb := range []string{"dress", "start"} {
		b, _ = b.Step(Event{Verb: verb})
	}
	if got := mistakesOf(b); slices.Contains(got, "chuck-key") {
		t.Errorf("%v", got)
	}
	for _, o := range New(shippedJob(t, "pump-stud")).Offers() {
		if o.Text == "key out" {
			t.Error("the key of no chuck is offered")
		}
	}
}

// Whole passes close on the mark that was used by hand, also where the gears are wrong and
// no pass counts as the first of the thread.
func TestWholePassesKeepTheMark(t *testing.T) {
	b := playedFrom(t, `dress, key out, feed off, speed 70, gears 40/32, angle 29.5 tailstock, height, square, gibs, oil, start, touch, zero cross, zero compound, cross out 0.2, return,
		cross to 0, compound in 0.002, close on 3, run, cross out 0.2, open, return`, "pass 0.001", "pass 0.001")
	for _, p := range b.Passes {
		if p.Mark != 3 {
			t.Errorf("pass %d on mark %d", p.N, p.Mark)
		}
	}
	if got := mistakesOf(b); slices.Contains(got, "closed-blind") {
		t.Errorf("%v", got)
	}
}

// A dial that reads what it is asked for is not wound a turn further into the metal, and
// one that stands whole turns out still comes back.
func TestToAReadingThatIsThere(t *testing.T) {
	small := shippedJob(t, "adjusting-screw")
	small.Lathe.Cross = machine.Dial{Turn: .050, Division: .001}
	b := New(small)
	for _, text := range []string{"dress", "key out", "feed off", "speed 70", "gears 32/40", "angle 29.5 tailstock", "height", "square", "gibs", "oil", "start", "touch", "zero cross", "zero compound", "cross out 0.1", "return",
		"cross to 0", "compound in 0.002", "close on 1", "run", "cross out 0.1", "open", "return", "cross to 0", "cross out 0.03"} {
		e, err := Parse(text, machine.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		b, _ = b.Step(e)
	}
	reads := b.CrossReading()
	next, said := b.Step(Event{Verb: "cross", Word: "to", X: reads.Inches(), Has: true})
	if next.Cross != b.Cross || len(said) != 1 || said[0].Name != "reads-that" {
		t.Errorf("wound from %v to %v: %v", b.Cross, next.Cross, said)
	}
	out := played(t, "cross to 0.002", "cross out 0.2", "cross to 0.002") // a pass given up: a whole turn out and back to a reading past the last cut
	if out.Depth() < 0 || !calc.Within(out.CrossReading().Inches(), 0.002, 1e-9) {
		t.Errorf("at %v, the dial reads %v", out.Depth(), out.CrossReading())
	}
	if got := mistakesOf(b); len(b.Passes) != 1 || len(got) > 0 {
		t.Errorf("%d passes, %v: whole turns out were not wound back", len(b.Passes), got)
	}
}

// Why there is no thread is said: the dial set to zero away from the work, the tool fed the
// wrong way, nothing touched off at all.
func TestWhyThereIsNoThread(t *testing.T) {
	begin := "dress, key out, feed off, speed 70, gears 32/40, angle 29.5 tailstock, height, square, gibs, oil, start, "
	for setUp, want := range map[string]string{
		begin + "close on 1, run, open, return, stop, done":                                                                          "never-zeroed",
		begin + "touch, cross out 0.1, zero cross, zero compound, return, close on 1, run, open, return, stop, done":                 "zeroed-away",
		begin + "touch, zero cross, zero compound, cross out 0.2, return, close on 1, run, open, return, stop, done":                 "never-cut",
		begin + "touch, zero cross, zero compound, return, compound out 0.01, cross to 0, close on 1, run, open, return, stop, done": "never-cut",
	} {
		b := playedFrom(t, setUp)
		if b.Outcome == nil || !slices.Contains(b.Outcome.Reasons, want) {
			t.Errorf("%s: %+v, want %s", setUp[len(begin):], b.Outcome, want)
		}
	}
}

// A groove that is to go deeper still is not said to be too shallow for its width, and what
// the go gauge does not start in, the not-go gauge does not either.
func TestWhatIsSaidOfAHalfCutThread(t *testing.T) {
	b := played(t, "pass 0.004", "pass 0.004", "stop", "clean hook", "test go", "test not-go", "done")
	if n := len(b.Tests); n != 2 || b.Tests[0].Result != "no-start" || b.Tests[1].Result != "no-start" {
		t.Errorf("%v", b.Tests)
	}
	b = played(t, "pass 0.006", "pass 0.006", "pass 0.006", "pass 0.006", "pass 0.006", "pass 0.006", "pass 0.006", "stop", "done")
	if b.Outcome == nil || !slices.Contains(b.Outcome.Reasons, "metal-left") || slices.Contains(b.Outcome.Reasons, "root") || !slices.Contains(b.Outcome.Reasons, "untested") {
		t.Errorf("%+v", b.Outcome)
	}
}

// The cut that goes past the size is the one that is named, not the end.
func TestTheCutPastItsSize(t *testing.T) {
	moves := slices.Repeat([]string{"pass 0.006"}, 14)
	b := played(t, append(moves, "stop", "done")...)
	for _, m := range b.Mistakes {
		if m.Name == "cut-past-size" {
			if m.Event >= len(b.Log)-1 {
				t.Errorf("at move %d of %d", m.Event, len(b.Log))
			}
			return
		}
	}
	t.Errorf("%v after %d passes", mistakesOf(b), len(b.Passes))
}
