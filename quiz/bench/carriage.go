package bench

import "scratchpass/calc"

// goBack winds the carriage by hand to where the cut begins: the free end, or the groove
// behind the thread; without a word where it was last.
func (s *step) goBack(e Event) {
	if s.Nut {
		s.say("nut-is-closed")
		return
	}
	groove := s.InGroove
	if e.Word != "" {
		groove = e.Word == "groove"
	}
	stays := groove == s.InGroove && groove && s.AtBegin()
	if !stays {
		if s.drag(false); s.Over {
			return
		}
	}
	s.advance(2)
	s.InGroove = groove
	if !groove {
		s.Z = -s.Job.StartRoom()
		s.say("back-at-start")
		s.surprise()
		return
	}
	s.Z = s.Job.groovePlace() - s.sideways()
	if s.Job.plain() {
		s.say("no-groove-there")
	} else {
		s.say("in-the-groove")
	}
	s.surprise()
}

// runOff lets the carriage run towards the tailstock: off the free end first, then on to
// what stands there.
func (s *step) runOff() {
	off := s.Job.Thread.Pitch.Times(0.5)
	room := s.Job.tailRoom()
	switch {
	case s.place() > -off+hair:
		s.advance((s.place() + off).Over(s.perSecond()))
		if s.Over {
			return
		}
		s.sayClear()
		s.say("off-the-end", "left", s.text(s.TailLeft()), "seconds", calc.Fixed(s.TailLeft().Over(s.perSecond()), 0))
	case s.TailLeft() > room.Times(0.75):
		s.advance((s.TailLeft() - room.Times(0.5)).Over(s.perSecond()))
		s.say("runs-away", "left", s.text(s.TailLeft()))
	default:
		s.advance(s.TailLeft().Over(s.perSecond()) + 0.001)
	}
}

// runBack brings the tool back to where the cut begins, with the half-nut closed.
func (s *step) runBack() {
	way := s.Z + s.Job.StartRoom()
	if s.dir() > 0 {
		way = s.Job.groovePlace() - s.place()
		if way <= hair { // past the groove already
			s.advance(s.Left().Over(s.perSecond()) + 0.001)
			return
		}
		s.InGroove = true
	} else {
		s.InGroove = false
	}
	s.advance(way.Over(s.perSecond()))
	switch {
	case s.Over:
	case s.InGroove:
		s.say("in-the-groove")
	default:
		s.say("back-at-start")
	}
}

// onward lets the carriage run with the work coming down on the edge: through the thread,
// and into what lies behind it on either side.
func (s *step) onward(run calc.Length) {
	from := s.place()
	left, name := s.Left(), s.Job.hits()
	if run < 0 {
		left, name = s.TailLeft(), mistakeHitTailstock
	}
	hit := max(run, -run) >= left-hair
	if hit {
		run = max(left, 0).Times(s.dir())
	}
	if s.cutting == nil && s.Depth() > hair && max(from, from+run) > 0 && min(from, from+run) < s.Job.Length-hair {
		s.beginPass(min(max(from, 0), s.Job.Length))
	}
	s.Screw += run
	s.Z += run
	if hit && !s.Over {
		s.endPass()
		s.leverFirst()
		s.smash(name)
	}
}

// leverFirst says, before what is run into, that the lever sent the carriage the wrong way:
// that is the mistake, and the blow what came of it.
func (s *step) leverFirst() {
	if s.Hand() != s.Job.Thread.Hand && s.dir() != s.Job.Way() {
		s.once(mistakeWrongLever, "set", s.Hand().String(), "hand", s.Job.Thread.Hand.String())
	}
}

// back runs the carriage with the work coming from the back of the tool. Towards the
// tailstock whoever stands there stops it before the start of the thread; in a groove the
// shoulder is too near for that.
func (s *step) back(run calc.Length) {
	if s.drag(s.dir() == s.Job.Way()); s.Over {
		return
	}
	hit := false
	if run < 0 {
		run = max(run, min(-s.Job.StartRoom()-s.Z, 0))
	} else if left := s.Left(); run >= left-hair {
		run, hit = max(left, 0), true
	}
	s.Screw += run
	s.Z += run
	if hit {
		s.leverFirst()
		s.smash(s.Job.hits())
	}
}

// drag looks at a tool that goes through the thread without cutting: on its way back, or
// with the work rubbing on its back.
func (s *step) drag(rubs bool) {
	if !s.inMetal() {
		return
	}
	if s.place() > s.Job.Length-hair && s.Depth() > s.deepest()+0.01 { // deeper than any groove it meets the end wall
		s.endPass()
		s.smash(mistakeJammed)
		return
	}
	if rubs {
		s.act(mistakeBackOfTool)
	} else {
		s.act(mistakeDragged)
	}
	s.Torn = true
}

// begunInMetal looks at a tool that is fed in behind the thread where there is no groove for
// it: it cuts a ring, or breaks. It reports whether that is so.
func (s *step) begunInMetal(depth calc.Length) bool {
	if !s.InGroove || s.Nut || s.Turn == 0 || depth < 0.0005 || depth <= s.reliefDepth() {
		return false
	}
	if depth > s.reliefDepth()+ringBreaks {
		s.smash(mistakeNoGroove)
		return true
	}
	s.act(mistakeNoGroove)
	s.Torn = true
	return true
}
