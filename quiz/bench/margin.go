package bench

import (
	"strings"

	"scratchpass/calc"
)

// HandSeconds is how long a practised move of the hand takes step by step, in seconds; against
// the clock the learner's own hand takes what it takes.
const HandSeconds = handSeconds

// Margin is what was left at the end of a pass when the carriage stood: until then it went
// towards what lies behind the thread.
type Margin struct {
	Event   int         // number of the move that made it stand, from 1
	Pass    int         // the pass, from 1; 0 before the first that cut
	Left    calc.Length // what the tip, or what stands ahead of it, had still to go
	RPM     float64     // of the spindle in that pass
	Seconds float64     // what that way would have taken
}

// margin notes what is left. A pass that ended before the last thread was not at the end; one
// towards the free end has only air before it.
func (s *step) margin() {
	if s.Over || !s.Job.Hurries() || s.place() < s.Job.Length-s.Job.Thread.Pitch {
		return
	}
	left := s.Left()
	s.Margins = add(s.Margins, Margin{len(s.Log) + 1, len(s.Passes), left, s.RPM, left.Over(s.perSecond())})
}

// Closest is the pass that left the least time, the first of several alike; ok is false where
// none came to the end of the thread.
func (b Bench) Closest() (least Margin, ok bool) {
	for i, m := range b.Margins {
		if i == 0 || m.Seconds < least.Seconds {
			least = m
		}
	}
	return least, len(b.Margins) > 0
}

// warnOfSpeed says once of each speed that the gap leaves the hands less time than the card
// asks for. Step by step they are never late: nothing else would tell.
func (s *step) warnOfSpeed() {
	speed := calc.Shortest(s.RPM, 1)
	if !s.Job.Hurries() || s.warnedOf(speed) {
		return
	}
	p := Plan{Job: s.Job, Lead: s.Job.Thread.Lead(), Hands: s.Job.hands()}
	if err := p.speeds(); err != nil || s.RPM <= p.Fastest+shareOff {
		return // a job that has no card: what is wrong with it is said elsewhere
	}
	seconds := s.Job.Free().Over(p.Lead.Times(s.RPM / 60))
	facts := []string{"speed", speed, "seconds", calc.Fixed(seconds, 1), "hands", calc.Fixed(p.Hands, 0)}
	if p.TooFast {
		s.say("short-of-time-ever", facts...)
		return
	}
	s.say("short-of-time", append(facts, "would", calc.Shortest(float64(p.RPM), 0))...)
}

// warnedOf reports whether that was said of a speed.
func (s *step) warnedOf(speed string) bool {
	for _, e := range s.Log {
		for _, h := range e.Happened {
			if strings.HasPrefix(h.Name, "short-of-time") && h.Facts["speed"] == speed {
				return true
			}
		}
	}
	return false
}
