package bench

import "scratchpass/calc"

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
	add(b.wrongHand(), "wrong-hand")
	add(b.pastSize(), "past-size")
	add(b.cutSo(leaning), "leans")
	add(b.cutSo(offCentre), "off-centre")
	add(b.cutSo(onCone), "on-cone")
	add(b.cutSo(offTaper), "no-taper")
	return reasons
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
		s.wrongThread(reason)
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

// wrongThread records the mistake of a thread of another lead or hand.
func (s *step) wrongThread(reason string) {
	switch {
	case reason == "wrong-hand":
		s.once(mistakeWrongHand)
	case reason == "wrong-lead" && s.starts() > 1 && s.pitchForLead():
		s.once(mistakePitchForLead)
	case reason == "wrong-lead":
		s.once(mistakeWrongLead)
	}
}

// pitchForLead reports whether a thread of several starts was cut with gears for its pitch.
func (b Bench) pitchForLead() bool {
	pitch := b.Job.Thread.Pitch.Inches()
	return b.cutSo(func(p Pass) bool { return calc.Within(p.Lead.Inches(), pitch, pitch*0.005) })
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
