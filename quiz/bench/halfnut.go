package bench

import (
	"math"

	"scratchpass/calc"
)

// close closes the half-nut: on a mark, waiting for it, or at once.
func (s *step) close(e Event) {
	switch {
	case s.Nut:
		s.say("nut-is-closed")
		return
	case s.Turn < 0 && !s.Flipped && !s.Job.InReverse():
		s.say("not-in-reverse")
		return
	case s.Turn == 0:
		s.say("spindle-stands")
		return
	case s.FeedOn:
		s.act(mistakeFeedLeftIn)
		return
	}
	if s.Doubt {
		s.Doubt = false
		s.wrong(mistakeLostCount)
	}
	if e.Has && !s.waitFor(int(e.X)) {
		return
	}
	on, err := calc.RunToNut(-s.phase().Times(s.dir()), s.Job.screwLead(), nutSlack)
	if err != nil {
		s.say("too-far")
		return
	}
	if on > 0 {
		s.advance(on.Over(s.perSecond()))
	}
	threads := math.Round((-s.phase()).Over(s.Job.screwLead()))
	s.Z = s.Screw - s.Job.screwLead().Times(threads) // exactly on a thread of the screw
	s.Nut = true
	mark := s.markNow()
	s.Dip = mark
	if mark > 0 {
		s.say("closed-on", "mark", calc.Shortest(float64(mark), 0))
		if !s.Job.KeepClosed() {
			s.noMark()
		}
		return
	}
	s.say("closed")
	if _, ok := s.Job.Lathe.ThreadDial(); !ok || s.Job.AnyMoment() || s.Job.KeepClosed() {
		return
	}
	if !s.hasFirst && !s.markFinds(s.phase()) {
		s.act(mistakeFirstOnNoMark)
		return
	}
	s.act(mistakeClosedBlind)
	s.noMark()
}

// markFinds reports whether a mark of the thread dial brings back a groove that was begun
// at a phase.
func (b Bench) markFinds(phase calc.Length) bool {
	dial, ok := b.Job.Lathe.ThreadDial()
	if !ok {
		return false
	}
	for mark := range dial.Marks {
		on, err := dial.RunToMark(-phase, mark)
		if err != nil {
			return false
		}
		if off := on.Remainder(b.Job.Thread.Lead()); min(off, b.Job.Thread.Lead()-off) < sizeSlack {
			return true
		}
	}
	return false
}

// noMark says so where the first pass was begun on no mark, and none finds it.
func (s *step) noMark() {
	if s.hasFirst && !s.markFinds(s.first) {
		s.say("no-mark-finds")
	}
}

// markNow is the mark under the index, 1 to N; 0 when there is none just there.
func (b Bench) markNow() int {
	at, ok := b.Mark()
	if !ok {
		return 0
	}
	near := math.Round(at)
	if math.Abs(at-near) > 0.02 {
		return 0
	}
	return int(near)%b.Job.Lathe.DialMarks + 1
}

// runTo is how far the lead screw still runs until a mark, 1 to N, comes round, whichever
// way it turns; ok is false where the dial has no such mark.
func (b Bench) runTo(mark int) (on calc.Length, ok bool) {
	dial, ok := b.Job.Lathe.ThreadDial()
	if !ok || mark < 1 || mark > dial.Marks {
		return 0, false
	}
	run, at := -b.phase(), mark-1
	if b.dir() < 0 { // the dial turns the other way
		run, at = -run, (dial.Marks-at)%dial.Marks
	}
	on, err := dial.RunToMark(run, at)
	return on, err == nil
}

// waitFor waits until a mark comes round. It reports whether it is there.
func (s *step) waitFor(mark int) bool {
	dial, ok := s.Job.Lathe.ThreadDial()
	if !ok {
		s.say("no-thread-dial")
		return false
	}
	on, ok := s.runTo(mark)
	if !ok {
		s.say("no-such-mark", "marks", calc.Shortest(float64(dial.Marks), 0))
		return false
	}
	if s.Past {
		s.Past = false
		on += s.Job.screwLead().Times(0.5)
		s.advance(on.Over(s.perSecond()))
		spacing, _ := dial.Spacing()
		s.say(LinePast, "mark", calc.Shortest(float64(mark), 0), "seconds", calc.Fixed(spacing.Times(float64(dial.Marks)).Over(s.perSecond()), 0))
		return false
	}
	s.advance(on.Over(s.perSecond()))
	return true
}

// open opens the half-nut.
func (s *step) open(Event) {
	if !s.Nut {
		s.say("nut-is-open")
		return
	}
	s.hands()
	if s.Over {
		return
	}
	inMetal := s.inMetal() && !s.inRelief()
	free := s.inMetal() && !inMetal
	s.endPass()
	if s.Turn > 0 {
		s.margin()
	}
	s.Nut = false
	if free {
		s.say("opened-in-relief")
	} else {
		s.say("opened")
	}
	if s.Job.KeepClosed() && len(s.Passes) > 0 {
		s.act(mistakeOpenedOnMetric)
	}
	if inMetal && s.Turn != 0 {
		if s.place() < s.Job.Length-hair {
			s.Torn = true
		}
		s.act(mistakeOpenedFirst)
	}
}
