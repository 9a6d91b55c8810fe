package bench

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
)

func (s *step) dress(Event) { s.Dressed = true; s.say("dressed") }
func (s *step) key(Event)   { s.KeyOut = true; s.say("key-out") }
func (s *step) feed(Event)  { s.FeedOn = false; s.say("feed-off") }

func (s *step) height(Event) {
	switch {
	case !s.standing():
	case s.cutDeep() && !s.Height:
		s.say("tool-too-late")
	default:
		s.Height = true
		s.say("on-centre")
	}
}

func (s *step) gibs(Event) {
	if s.standing() {
		s.Snug = true
		s.say("snug")
	}
}

func (s *step) speed(e Event) {
	if !s.standing() {
		return
	}
	speeds := s.Job.Lathe.Speeds
	if len(speeds) > 0 && !slices.Contains(speeds, int(e.X)) || e.X < 5 || e.X > 3000 || e.X != math.Trunc(e.X) {
		s.say("no-such-speed", "speed", calc.Shortest(e.X, 1), "speeds", list(speeds))
		return
	}
	s.RPM, s.Set.Speed = e.X, true
	s.say("speed-set", "speed", calc.Shortest(e.X, 1))
	if len(s.Passes) > 0 { // a whole pass may be next, which starts the spindle and runs
		s.warnOfSpeed()
	}
}

func list(ns []int) string {
	texts := make([]string, len(ns))
	for i, n := range ns {
		texts[i] = strconv.Itoa(n)
	}
	return strings.Join(texts, ", ")
}

func (s *step) gears(e Event) {
	if !s.standing() {
		return
	}
	have := slices.Clone(s.Job.Lathe.Gears)
	if len(have) == 0 {
		s.say("no-gears")
		return
	}
	var drivers, driven []int
	for i, n := range e.Ns {
		k := slices.Index(have, n)
		if k < 0 {
			s.say("no-such-gear", "gear", strconv.Itoa(n), "gears", list(s.Job.Lathe.Gears))
			return
		}
		have = slices.Delete(have, k, k+1)
		if i%2 == 0 {
			drivers = append(drivers, n)
		} else {
			driven = append(driven, n)
		}
	}
	lead, err := calc.LeadOfTrain(drivers, driven, s.Job.screwLead())
	if err != nil || lead > 4 || lead < calc.FinestPitch {
		s.say("no-such-lead")
		return
	}
	if s.setLead(lead) {
		s.FirstGear = drivers[0]
	}
}

func (s *step) levers(e Event) {
	switch {
	case !s.standing():
	case len(s.Job.Lathe.Gears) > 0:
		s.say("no-levers")
	case e.lead() > 4 || e.lead() < calc.FinestPitch:
		s.say("no-such-lead")
	default:
		s.setLead(e.lead())
	}
}

// forgetFirst is for gears that mesh anew: where the dial stood means nothing now, and the
// next pass is a first one again, made by hand.
func (s *step) forgetFirst() {
	s.Away = Event{}
	s.Screw, s.Turns, s.hasFirst, s.FirstDip = 0, 0, false, 0
}

// setLead sets what the gears give. What the dial showed before means nothing now.
func (s *step) setLead(lead calc.Length) bool {
	if s.hasFirst {
		s.say("gears-too-late")
		return false
	}
	s.Lead, s.Set.Lead = lead, true
	s.forgetFirst()
	s.Nut = false
	s.say("geared")
	return true
}

func (s *step) angle(e Event) {
	switch {
	case !s.standing():
	case e.X > 90:
		s.say("no-such-angle")
	default:
		angle, err := calc.CompoundScaleReading(calc.Degrees(e.X), s.Job.Lathe.CompoundZero)
		if err != nil {
			s.say("no-such-angle")
			return
		}
		if s.hasFirst {
			s.say("angle-too-late")
			return
		}
		// Swung to another angle the tool stands elsewhere: it is set back clear.
		// The post turns with it, and so does the tool.
		if s.Squared {
			s.say("turned-with-it")
		}
		s.Squared = false
		if e.Word != s.Job.Swing() {
			angle = -angle
		}
		s.Angle, s.Set.Angle = angle, true
		s.Cross, s.Compound = s.Job.slide(), s.Job.slide()
		s.say("angle-set", "scale", calc.Shortest(e.X, 2), "side", e.Word)
	}
}

// overhang sets the bar anew in its holder. The work can't be set anew: it would lose
// its groove.
func (s *step) overhang(e Event) {
	switch {
	case !s.standing():
	case s.Job.Side == calc.Outside:
		s.say("work-stays")
	case e.Length() < s.Job.LeastOverhang()-hair || e.X > 12:
		s.say("no-such-overhang", "least", s.text(s.Job.LeastOverhang()))
	case s.hasFirst:
		s.say("bar-too-late")
	default:
		if s.Squared || s.Height {
			s.say("bar-turned")
		}
		s.Squared, s.Height = false, false
		s.Job.StandsOut = e.Length()
		s.say("overhang-set", "overhang", s.text(e.Length()))
	}
}

// touch brings the tool over the work and up to it with the cross slide.
func (s *step) touch(Event) {
	switch {
	case s.Nut:
		s.say("nut-is-closed")
		return
	case len(s.Passes) > 0:
		s.say("touched-before")
		return
	case s.Turn == 0:
		s.say("must-turn")
		return
	}
	s.Z = s.Job.touchAt() - s.sideways()
	by := -s.Depth().Times(s.in())
	slide, err := s.Cross.Wound(by)
	if err != nil {
		s.say("too-far")
		return
	}
	s.Cross = slide
	if rest := -s.Depth().Times(s.in()); rest != 0 { // the play had to be taken up
		if slide, err = s.Cross.Wound(rest); err == nil {
			s.Cross = slide
		}
	}
	s.say("touched")
}

func (s *step) zero(e Event) {
	if e.Word == "cross" {
		s.Zeros[0], s.Zeroed[0] = s.Cross.Screw, true
		s.AtTouch = s.overWork() && calc.Within(s.Depth().Inches(), 0, 0.002)
	} else {
		s.Zeros[1], s.Zeroed[1] = s.Compound.Screw, true
	}
	s.say("zeroed", "dial", e.Word)
}
