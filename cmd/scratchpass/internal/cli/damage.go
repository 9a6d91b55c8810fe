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
	lost, err := rec.Lost(false)
	if err != nil || len(lost) == 0 {
		return err
	}
	r.Tell(s, s.Say("say-lost", "n", len(lost), "which", WhichLost(s, lost)))
	if rec.ReadOnly {
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
