package bench

import (
	"cmp"

	"scratchpass/calc"
)

// WholePass reports whether an event is a whole pass, and what it feeds first: pass goes
// on with the compound, finish goes straight in past the last cut with the cross slide,
// spring feeds nothing.
func (e Event) WholePass() (compound, straight calc.Length, ok bool) {
	switch e.Verb {
	case "pass":
		return e.Length(), 0, true
	case "finish":
		return 0, e.Length(), true
	case "spring":
		return 0, 0, true
	}
	return 0, 0, false
}

// CanRepeat reports whether a pass was made by hand: whoever has not made the moves has
// nothing to repeat.
func (b Bench) CanRepeat() bool { return len(b.Passes) > 0 && b.Away.Verb != "" }

// whole makes a pass with every move of it, as it was made by hand before.
func (s *step) whole(e Event) {
	compound, straight, _ := e.WholePass()
	switch {
	case !s.CanRepeat():
		s.say("by-hand-first")
		return
	case s.Job.KeepClosed() && !s.Nut:
		s.say("nut-was-opened")
		return
	case !s.AtStart():
		s.say("not-at-start")
		return
	}
	before := *s
	s.toDepth(compound, straight)
	if s.refused { // nothing is cut, and nothing has been moved
		why := s.happened[len(s.happened)-1]
		*s = before
		s.happened = add(s.happened, why)
		return
	}
	if s.Job.KeepClosed() {
		s.reversing()
		return
	}
	if s.Turn == 0 {
		s.do(s.cutTurn())
	}
	s.do(s.againOn())
	if !s.Nut { // the mark went past: it waits for the next
		s.do(s.againOn())
	}
	for _, verb := range []string{"run", "away", "open", "return"} {
		if s.Over || !s.Nut && verb == "run" { // it did not close: that was said
			return
		}
		if verb == "away" {
			s.do(s.Away)
			continue
		}
		s.do(Event{Verb: verb})
	}
}

// cutTurn is the move that turns the spindle as in the last pass.
func (b Bench) cutTurn() Event {
	if b.Passes[len(b.Passes)-1].Turn < 0 {
		return Event{Verb: "reverse"}
	}
	return Event{Verb: "start"}
}

// againOn closes the half-nut on the next mark that finds the groove of the last pass. With
// wrong gears no pass counts as the first, and only its own mark does.
func (s *step) againOn() Event {
	mark := cmp.Or(s.FirstDip, s.Dip)
	if s.starts() > 1 {
		mark = cmp.Or(s.Passes[len(s.Passes)-1].Mark, s.Dip)
	}
	if mark == 0 {
		return Event{Verb: "close"}
	}
	best := mark
	if s.hasFirst {
		soonest, _ := s.runTo(mark)
		for _, k := range s.Job.SafeMarks() {
			other := (mark-1+k)%s.Job.Lathe.DialMarks + 1
			if on, ok := s.runTo(other); ok && on < soonest {
				best, soonest = other, on
			}
		}
	}
	return Event{Verb: "close", Word: "on", X: float64(best), Has: true}
}

// MayRepeat reports whether a whole pass with this feed can be made from here.
func (b Bench) MayRepeat(e Event) bool {
	compound, straight, ok := e.WholePass()
	if !ok || !b.CanRepeat() || !b.AtStart() {
		return false
	}
	s := step{Bench: b}
	s.toDepth(compound, straight)
	return !s.refused
}

// reversing is the pass with the half-nut kept closed.
func (s *step) reversing() {
	cut := s.cutTurn().Verb
	back := map[string]string{"start": "reverse", "reverse": "start"}[cut]
	turns := map[string]int{"start": 1, "reverse": -1}
	if s.Turn == turns[back] {
		s.do(Event{Verb: "stop"})
	}
	for _, verb := range []string{cut, "run", "away", "stop", back, "run", "stop"} {
		if s.Over {
			return
		}
		switch {
		case verb == "away":
			s.do(s.Away)
		case verb == cut && s.Turn == turns[cut]:
		default:
			s.do(Event{Verb: verb})
		}
	}
	s.surprise()
}

// toDepth feeds the compound and brings the cross slide back to its last cut, and on.
func (s *step) toDepth(compound, straight calc.Length) {
	for _, e := range s.Feeds(compound, straight) {
		if s.do(e); s.refused {
			return
		}
	}
	s.say("fed", "compound", s.text(s.CompoundReading()), "cross", s.text(s.CrossReading()))
}

// AtStart reports whether a whole pass may begin: the tool before the thread, the half-nut
// as it is between passes.
func (b Bench) AtStart() bool {
	return b.AtBegin() && b.cutting == nil && b.Nut == b.Job.KeepClosed()
}
