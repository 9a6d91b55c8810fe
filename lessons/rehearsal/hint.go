package rehearsal

import (
	"scratchpass/quiz/bench"
)

// giveHint gives a hint, and counts it.
func (s Flow) giveHint(r *Rehearsal) error {
	r.Hints++
	if !r.Begun.IsZero() {
		if err := s.noteBegun(r); err != nil {
			return err
		}
	}
	return s.tell(s.hintAtTheBench(r))
}

// hintAtTheBench says what to look at next: one thing.
func (s Flow) hintAtTheBench(r *Rehearsal) string {
	b := r.Bench
	if missing := b.Missing(); b.PassesDone() == 0 && len(missing) > 0 {
		return s.Say("bench-hint-missing", "what", r.words.Moves[missing[0]].Does, "n", len(missing)-1)
	}
	return s.Say("bench-hint-" + nextLook(b))
}

// nextLook names what someone with experience would look at now.
func nextLook(b bench.Bench) string {
	st := b.Status()
	switch {
	case len(b.Spoiled) > 0:
		return "scrap"
	case b.Doubt:
		return "doubt"
	case st.Place != "start":
		return atWork(b, st)
	case st.Turn == 0 && b.PassesDone() == 1 && !tried(b, "count"):
		return "count"
	case st.Turn == 0:
		return "standing"
	case st.Nut && !b.Job.KeepClosed():
		return "open"
	case b.PassesDone() > 0 && st.Clear:
		return "feed"
	}
	return "start"
}

// atWork is the same for a tool that stands over the thread or behind it.
func atWork(b bench.Bench, st bench.Status) string {
	switch {
	case st.Nut && st.Place == "end":
		return "end"
	case st.Nut && st.Place == "gap":
		return "gap"
	case st.Nut:
		return "thread"
	case b.PassesDone() == 0 && !st.Clear:
		return "touch"
	case !st.Clear:
		return "out"
	}
	return "return"
}

// tried reports whether a move has been made.
func tried(b bench.Bench, verb string) bool {
	for _, e := range b.Log {
		if e.Event.Verb == verb {
			return true
		}
	}
	return false
}
