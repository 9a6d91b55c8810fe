package bench

// whyClear says what keeps a tool that was touched off from the work.
func (s *step) whyClear() {
	deeper, _ := s.Job.Ways()
	reads := s.crossTravel() + s.compoundTravel().Times(s.Angle.Cos())
	switch {
	case !s.AtTouch:
		s.say("clear-no-touch")
	case len(s.Passes) > 0 && s.crossOut():
		s.say("clear-out")
	case s.compoundTravel() < 0:
		s.say("fed-away", "deeper", deeper)
	case reads > hair && s.Depth() <= hair:
		s.say("clear-play")
	default:
		s.say("clear-short", "deeper", deeper)
	}
}

// whyNothing says why a tool that runs in its groove takes no chip.
func (s *step) whyNothing(p Pass) {
	switch {
	case p.Before-p.Set > hair:
		s.say("short-of-groove")
	case p.Spring:
		s.say("cuts-no-more")
	default:
		s.say("only-springs")
	}
}
