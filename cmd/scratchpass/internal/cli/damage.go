package cli

import (
	"strings"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// tellOfDamage tells what became of a record that was damaged, and of the answers that are
// lost, once.
func (r *Run) tellOfDamage(s *sitting.Session, rec *record.Record) error {
	if m := rec.Mended; m != nil {
		r.Tell(s, s.Say("say-mended", "kept", m.Kept, "where", m.Aside))
		if m.FromCopy > 0 {
			r.Tell(s, s.Say("say-mended-copy", "n", m.FromCopy, "day", m.CopyOf.Format(time.DateOnly)))
		}
		if m.Unsure {
			r.Tell(s, s.Say("say-mended-unsure"))
		}
	}
	told := 0
	for _, of := range []struct {
		phrase string
		read   func(all bool) ([]record.Lost, error)
	}{{"say-lost", rec.Lost}, {"say-lost-rehearsals", rec.LostRehearsals}} {
		lost, err := of.read(false)
		if err != nil {
			return err
		}
		if len(lost) > 0 {
			r.Tell(s, s.Say(of.phrase, "n", len(lost), "which", WhichLost(s, lost)))
			told++
		}
	}
	if rec.ReadOnly || told == 0 {
		return nil
	}
	return rec.LostSaid()
}

// mostNamed is how many lost answers are named one by one.
const mostNamed = 5

// WhichLost tells which answers are lost.
func WhichLost(s *sitting.Session, lost []record.Lost) string {
	var which []string
	for i, l := range lost {
		if i == mostNamed {
			which = append(which, s.Say("say-lost-more", "n", len(lost)-i))
			break
		}
		which = append(which, s.Say("say-lost-one", "n", l.N, "when", whenLost(s, l)))
	}
	return strings.Join(which, "; ")
}

// whenLost tells between which moments an answer was given.
func whenLost(s *sitting.Session, l record.Lost) string {
	const minute = "2006-01-02 15:04"
	after, before := l.After.Format(minute), l.Before.Format(minute)
	switch {
	case l.After.IsZero() && l.Before.IsZero():
		return s.Say("say-lost-ever")
	case l.After.IsZero():
		return s.Say("say-lost-before", "before", before)
	case l.Before.IsZero():
		return s.Say("say-lost-after", "after", after)
	}
	return s.Say("say-lost-between", "after", after, "before", before)
}
