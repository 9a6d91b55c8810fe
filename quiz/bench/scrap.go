package bench

// Spoil is what made the part scrap, and the move that did it.
type Spoil struct {
	Reason string // the name of a text, as the verdict has it
	Event  int    // number of the event, from 1
	Cause  MistakeName
}

// Spoilt returns the move that made the part scrap for a reason; ok is false where no move
// did, as of a blank that came too small.
func (b Bench) Spoilt(reason string) (s Spoil, ok bool) {
	for _, s := range b.Spoiled {
		if s.Reason == reason {
			return s, true
		}
	}
	return Spoil{}, false
}

// scrap lists what makes the part scrap now, however far it has come. cut tells that the
// move cut something.
func (b Bench) scrap(cut bool) []string {
	var reasons []string
	add := func(so bool, reason string) {
		if so {
			reasons = append(reasons, reason)
		}
	}
	add(b.Torn, "torn")
	add(b.second(), "second-groove")
	if !cut {
		return reasons
	}
	add(b.wrongLead(), "wrong-lead")
	add(b.pastSize(), "past-size")
	add(b.cutSo(leaning), "leans")
	add(b.cutSo(offCentre), "off-centre")
	add(b.cutSo(onCone), "on-cone")
	add(b.cutSo(offTaper), "no-taper")
	return reasons
}

// pastSize reports whether too much is off at one end of the thread.
func (b Bench) pastSize() bool {
	e, ok := b.PitchDiameter()
	end, okEnd := b.PitchAtEnd()
	return ok && b.metal(e) < 0 || okEnd && b.metal(end) < 0
}

// spoils says at once what this move has made scrap of, in the words of the verdict.
func (s *step) spoils(before Bench) {
	if s.Over && s.Outcome.Why != Done {
		s.spoil("smashed")
		return
	}
	cut := len(s.Passes) != len(before.Passes) || s.cutting != before.cutting
	var fresh []string
	for _, reason := range s.scrap(cut) {
		if _, old := s.Spoilt(reason); old {
			continue
		}
		if reason == "wrong-lead" {
			s.once(mistakeWrongLead)
		}
		s.spoil(reason)
		fresh = append(fresh, reason)
	}
	if len(fresh) == 0 || s.Over {
		return
	}
	s.say("scrapped")
	for _, reason := range fresh {
		s.say("reason-" + reason)
	}
}

// setWrong are the mistakes of the set-up that come out as scrap with the first deep cut, long
// after they were made.
var setWrong = map[string]MistakeName{"leans": mistakeNotSquared, "off-centre": mistakeOffCentre, "on-cone": mistakeSquaredToCone, "no-taper": mistakeTaperNotSet}

func (s *step) spoil(reason string) {
	at := Spoil{Reason: reason, Event: len(s.Log) + 1, Cause: s.cause()}
	if reason == "smashed" {
		at.Cause = MistakeName(s.Outcome.Why)
	}
	if set, ok := setWrong[reason]; ok && s.madeBefore(set) {
		at.Cause = set
	}
	s.Spoiled = add(s.Spoiled, at)
}
