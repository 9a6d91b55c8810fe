package bench

import (
	"math"
	"slices"

	"scratchpass/calc"
)

// crossSlide moves the cross slide by figures of its dial: in is away from you, out
// towards you.
func (s *step) crossSlide(e Event) {
	per := s.Job.Lathe.CrossReads.PerRadial()
	turn := s.Job.Lathe.Cross.Turn
	dial, ok := s.asked(e, turn, func(want calc.Length) calc.Length {
		if s.crossOut() {
			return s.backTo(want, turn)
		}
		return s.wayTo(want, s.CrossReading(), turn)
	})
	if !ok {
		return
	}
	before, running := s.Depth(), s.Nut && s.Turn != 0 && s.overWork() && (s.cutting != nil || len(s.Passes) > 0)
	s.wind(&s.Cross, dial.Times(1/per))
	if s.Depth() > before+0.002 && before > 0 && running && !s.refused && !s.Over {
		s.act(mistakeWrongWayOut, "by", s.text(max(dial, -dial)))
	}
	if dial.Times(s.in()) < 0 && !s.refused && s.Clear() { // only this was the tool taken out: a little back is none
		s.Away = Event{Verb: "cross", Word: "out", X: max(dial, -dial).Inches(), Has: true}
		if dial > 0 {
			s.Away.Word = "in"
		}
	}
}

func (s *step) compoundSlide(e Event) {
	turn := s.Job.Lathe.Compound.Turn
	dial, ok := s.asked(e, turn, func(want calc.Length) calc.Length { return s.wayTo(want, s.CompoundReading(), turn) })
	if !ok {
		return
	}
	if dial.Times(s.in()) > 0 && s.Touched() {
		angle := max(s.Angle, -s.Angle)
		low, high, _ := s.Job.compoundAngles()
		if (angle < low || angle > high) && !(s.starts() > 1 && s.Parallel()) {
			s.once(mistakeCompoundAngle, "angle", calc.Shortest(angle.Degrees(), 1), "usual", calc.Shortest(s.Job.UsualAngle().Degrees(), 1))
		}
		if s.Angle < 0 && !s.Parallel() {
			s.once(mistakeSwungWrongWay, "side", s.Job.Swing())
		}
	}
	s.wind(&s.Compound, dial)
	if dial.Times(s.in()) < 0 && s.Touched() && s.compoundTravel() < -hair && s.starts() == 1 && !s.refused && !s.Over && !s.saidBefore("fed-away") {
		deeper, _ := s.Job.Ways()
		s.say("fed-away", "deeper", deeper)
	}
}

// saidBefore reports whether something has been told, by its name.
func (s *step) saidBefore(name string) bool {
	told := func(h Happening) bool { return h.Name == name }
	return slices.ContainsFunc(s.happened, told) || slices.ContainsFunc(s.Log, func(e Entry) bool { return slices.ContainsFunc(e.Happened, told) })
}

// asked is how far a move winds a dial: by so much in or out, or to a reading, to which
// way finds the way. A reading that the dial does not have is refused in words.
func (s *step) asked(e Event, turn calc.Length, way func(want calc.Length) calc.Length) (dial calc.Length, ok bool) {
	switch e.Word {
	case "in":
		return e.Length(), true
	case "out":
		return -e.Length(), true
	}
	if e.Length() >= turn {
		s.refuse("past-a-turn", "reading", s.text(e.Length()), "turn", s.text(turn))
		return 0, false
	}
	dial = way(e.Length())
	s.wound(dial)
	if dial == 0 {
		s.say("reads-that")
	}
	return dial, true
}

// wound says which way and how far a slide is wound to a reading.
func (s *step) wound(dial calc.Length) {
	switch {
	case dial > hair:
		s.say("wound-in", "by", s.text(dial))
	case dial < -hair:
		s.say("wound-out", "by", s.text(-dial))
	}
}

// Touched reports whether the tool has been brought up to the work.
func (b Bench) Touched() bool { return b.Zeroed[0] || b.Zeroed[1] || len(b.Passes) > 0 }

// wayTo is how far a dial is wound to come to a reading, the nearest way.
func (s *step) wayTo(want, now, turn calc.Length) calc.Length {
	way := (want - now).Remainder(turn)
	if way > turn.Times(0.5) {
		way -= turn
	}
	return way
}

// backTo is how far a cross slide that is out of its cut is wound to come to a reading:
// on the turn of its last cut, as someone does who knows how many turns they came out.
func (s *step) backTo(want, turn calc.Length) calc.Length {
	per := s.Job.Lathe.CrossReads.PerRadial()
	last := s.LastIn.Times(per)
	to := want.Times(s.in()).Remainder(turn) // in the metal's direction, on some turn
	to += turn.Times(math.Round((last - to).Over(turn)))
	if to > last+turn.Times(0.25) && calc.Within(want.Inches(), s.CrossReading().Inches(), sizeSlack.Inches()) {
		return 0 // it reads that already, and a turn further would be far past the last cut
	}
	return (to - s.crossTravel().Times(per)).Times(s.in())
}

// crossOut reports whether the cross slide stands out of its last cut by half a turn of
// its dial or more.
func (s *step) crossOut() bool {
	out := (s.LastIn - s.crossTravel()).Times(s.Job.Lathe.CrossReads.PerRadial())
	return out > s.Job.Lathe.Cross.Turn.Times(0.5-shareOff)
}

// wind winds a screw and lets come what comes of it.
func (s *step) wind(slide *calc.Slide, by calc.Length) {
	if by > 1 || by < -1 {
		s.refuse("too-far")
		return
	}
	deeper := by.Times(s.in()) > hair
	if deeper && s.Doubt {
		s.Doubt = false
		s.wrong(mistakeLostCount)
	}
	before := s.Depth()
	if s.Nut && s.Turn != 0 {
		s.hands()
	}
	if s.Over {
		return
	}
	wound, err := slide.Wound(by)
	if err != nil || wound.Screw > slideTravel || wound.Screw < -slideTravel {
		s.refuse("too-far")
		return
	}
	*slide = wound
	if s.Depth() > 0.95 { // no job of this bench is that deep: the work is in the way long before
		s.endPass()
		s.smash(mistakeJammed)
		return
	}
	s.afterSlides(before)
}

// place is where the tip is along the thread.
func (b Bench) place() calc.Length { return b.Z + b.sideways() }

// overWork reports whether the tip is over the thread or what lies behind it.
func (b Bench) overWork() bool { return b.place() > 0 }

// inMetal reports whether the tip stands in the thread, and does not only touch it.
func (b Bench) inMetal() bool { return b.overWork() && b.Depth() > 0.0005 }

// afterSlides looks at where a move of a slide has brought the tool.
func (s *step) afterSlides(before calc.Length) {
	depth := s.Depth()
	if s.Job.Side == calc.Inside && s.overWork() && -depth > s.Job.Room() {
		s.act(mistakeHitFarWall, "room", s.text(s.Job.Room()))
		s.Torn = s.Torn || s.Turn != 0
	}
	if depth <= before+hair {
		if depth < before-hair { // drawn back, if only in part: the cut under way goes on at another depth
			s.endPass()
		}
		return
	}
	// Deeper.
	s.endPass()
	if !s.overWork() || depth <= 0 {
		return
	}
	if s.place() > s.Job.Length-hair && s.begunInMetal(depth) {
		return
	}
	if s.place() > s.Job.Length-hair && !s.Job.plain() {
		if depth > s.reliefDepth() {
			s.smash(mistakeJammed)
		}
		return
	}
	if s.Nut && s.Turn != 0 {
		return // the next bit of the way begins a pass at this depth
	}
	if depth <= s.deepest()+0.005 { // it only presses, or lies in its groove
		return
	}
	if s.Turn == 0 {
		s.smash(mistakeFedOverWork)
		return
	}
	s.act(mistakePlunged)
	s.Torn = true
}

// reliefDepth is how deep there is nothing to cut behind the end of the thread.
func (b Bench) reliefDepth() calc.Length { return b.Job.relief() }

// inRelief reports whether the tip stands free of metal behind the thread, though it is
// deeper than the crests: in a relief groove, or behind a bore that goes through. Where a
// thread runs out in plain metal it never does.
func (b Bench) inRelief() bool {
	return !b.Job.plain() && b.place() > b.Job.Length-hair && b.Depth() < b.reliefDepth()
}

// deepest is how deep the deepest pass went.
func (b Bench) deepest() calc.Length {
	deepest := calc.Length(0)
	for _, p := range b.all() {
		deepest = max(deepest, p.Depth)
	}
	return deepest
}
