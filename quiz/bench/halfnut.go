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
	case s.Turn < 0:
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
	on, err := calc.RunToNut(-s.phase(), s.Job.screwLead(), nutSlack)
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
		return
	}
	s.say("closed")
	if _, ok := s.Job.Lathe.ThreadDial(); ok && !s.Job.AnyMoment() && !s.Job.KeepClosed() {
		s.act(mistakeClosedBlind)
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

// waitFor waits until a mark comes round. It reports whether it is there.
func (s *step) waitFor(mark int) bool {
	dial, ok := s.Job.Lathe.ThreadDial()
	if !ok {
		s.say("no-thread-dial")
		return false
	}
	on, err := dial.RunToMark(-s.phase(), mark-1)
	if err != nil {
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
	inMetal := s.inMetal()
	s.endPass()
	s.Nut = false
	s.say("opened")
	if s.Job.KeepClosed() && len(s.Passes) > 0 {
		s.act(mistakeOpenedOnMetric)
	}
	if inMetal && s.Turn != 0 {
		where := "relief"
		if s.place() < s.Job.Length-hair {
			where, s.Torn = "thread", true
		}
		s.act(mistakeOpenedFirst, "where", where)
	}
}
