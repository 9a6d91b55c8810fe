package bench

import (
	"scratchpass/calc"
)

func (s *step) start(Event) {
	if s.Turn > 0 {
		s.say("turns-already")
		return
	}
	s.warnOfSpeed() // first: what can hurt someone is read last, and stays in sight
	if s.Turn < 0 {
		s.wrong(mistakeReversedWhileRunning)
	}
	if !s.KeyOut {
		s.KeyOut = true // it has flown out
		s.wrong(mistakeChuckKey)
	}
	if !s.Dressed {
		s.once(mistakeNotDressed)
	}
	s.backBetweenCentres()
	s.Turn = 1
	s.say("started", "speed", calc.Shortest(s.RPM, 1))
	s.dig()
}

// backBetweenCentres puts work that was taken out to be tried back before it turns.
func (s *step) backBetweenCentres() {
	if s.Out {
		s.Out = false
		s.say("back-between-centres")
	}
}

// dig looks at a tool that stands in the metal while the work turns and the carriage
// does not move.
func (s *step) dig() {
	if s.Turn != 0 && !s.Nut && s.overWork() && s.Depth() > 0.001 && s.place() < s.Job.Length-hair {
		s.act(mistakePlunged)
		s.Torn = true
	}
}

func (s *step) stop(Event) {
	if s.Turn == 0 {
		s.say("stands-already")
		return
	}
	if s.Nut {
		s.hands()
	}
	in := s.Nut && s.inMetal()
	s.advance(coastSeconds(s.RPM))
	s.endPass()
	if s.Nut && s.Turn > 0 {
		s.margin()
	}
	s.Turn = 0
	if in && !s.Over {
		s.act(mistakeStoppedInCut)
	}
	if !s.Over {
		s.say("stopped")
	}
}

func (s *step) reverse(Event) {
	if s.Turn < 0 {
		s.say("turns-already")
		return
	}
	if s.Turn > 0 {
		s.hands()
		if s.Over { // it ran on into what lies behind, while the hand was on its way
			return
		}
		s.endPass()
		s.wrong(mistakeReversedWhileRunning)
	}
	s.backBetweenCentres()
	if s.Job.Unscrews() {
		s.smash(mistakeChuckUnscrewed)
		return
	}
	if !s.KeyOut {
		s.KeyOut = true
		s.wrong(mistakeChuckKey)
	}
	s.Turn = -1
	s.say("reversed")
	s.dig()
}

func (s *step) wait(e Event) {
	if e.X > 600 {
		s.say("too-long-a-wait")
		return
	}
	s.advance(e.X)
}

// perSecond is how far the carriage goes in a second with the half-nut closed.
func (b Bench) perSecond() calc.Length { return b.Lead.Times(b.RPM / 60) }

// advance lets time go by.
func (s *step) advance(seconds float64) {
	if s.Over || seconds <= 0 {
		return
	}
	s.Clock += seconds
	if s.Turn == 0 {
		return
	}
	run := s.perSecond().Times(seconds * s.dir())
	s.Turns += s.RPM / 60 * seconds * float64(s.Turn)
	switch {
	case !s.Nut:
		s.Screw += run
	case s.Cutting():
		s.onward(run)
	default:
		s.back(run)
	}
}

// Meets is what the tool meets behind the thread: between centres that is the dog and its
// plate.
func (j Job) Meets() string {
	if j.End == Jaws && j.Hold == Centres {
		return "dog"
	}
	return j.End
}

// run lets the carriage run: to the end of the thread, on from there into whatever
// comes, or back to the start in reverse.
func (s *step) run(Event) {
	switch {
	case s.Turn == 0:
		s.say("spindle-stands")
	case !s.Nut:
		s.say("carriage-stands")
	case !s.Cutting():
		s.runBack()
	case s.dir() < 0:
		s.runOff()
	case s.place() < s.Job.Length-hair:
		s.advance((s.Job.Length - s.place()).Over(s.perSecond()))
		if !s.Over {
			s.sayClear()
			s.say("at-the-end", "gap", s.text(s.Job.Free()), "seconds", calc.Fixed(s.Job.Free().Over(s.perSecond()), 1))
		}
	default:
		s.advance(s.Left().Over(s.perSecond()) + 0.001)
	}
}

// sayClear says so where the tool ran through without cutting.
func (s *step) sayClear() {
	if s.cutting == nil && s.Touched() && !s.madeBefore(mistakeBackOfTool) {
		s.say("runs-clear")
		s.whyClear()
	}
}

// surprise lets come what the job has in store after so many passes.
func (s *step) surprise() {
	for _, x := range s.Job.Surprises {
		if x.After != len(s.Passes) || s.seen(x.What) {
			continue
		}
		switch x.What {
		case CalledAway:
			s.Doubt = true
			s.say("called-away")
		case LinePast:
			s.Past = true
		}
	}
}

// seen reports whether a surprise has come already.
func (s *step) seen(what string) bool {
	for _, e := range s.Log {
		for _, h := range e.Happened {
			if h.Name == what {
				return true
			}
		}
	}
	return what == LinePast && s.Past
}

// smash ends the rehearsal with something broken.
func (s *step) smash(name MistakeName, facts ...string) {
	s.ending = true
	s.wrong(name, facts...)
	s.Turn, s.Nut = 0, false
	s.end(string(name))
}
