package rehearsal

import (
	"slices"

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
	look := nextLook(r.Bench)
	setUp := unset(r.Bench)
	if len(setUp) == 0 {
		return s.Say("bench-hint-" + look)
	}
	return s.Say("bench-hint-"+look, "what", r.words.Moves[setUp[0]].Does, "n", len(setUp)-1)
}

// unset are the moves of the set-up that are missing before the first cut, without the dials,
// which are set when the tool touches.
func unset(b bench.Bench) []string {
	return slices.DeleteFunc(b.Missing(), func(verb string) bool { return verb == "zero" })
}

// nextLook names what someone with experience would look at now. What is wrong comes first,
// then what moves, then what is next in the order of the work.
func nextLook(b bench.Bench) string {
	st := b.Status()
	switch {
	case len(b.Spoiled) > 0:
		return "scrap"
	case b.Doubt:
		return "doubt"
	case st.Nut && (st.Place != "start" || st.Turn != 0):
		return carried(b, st)
	case b.PassesDone() == 0:
		return beforeFirst(b, st)
	case st.Place != "start" && !st.Clear:
		return "out"
	case st.Place != "start" && !st.Nut:
		return "return"
	case st.Turn == 0:
		return standing(b)
	case b.PassesDone() == 1 && !tried(b, "count"):
		return "count"
	case st.Clear:
		return "feed"
	}
	return "start"
}

// carried is the same while the half-nut is closed.
func carried(b bench.Bench, st bench.Status) string {
	closed := b.Job.KeepClosed()
	switch {
	case st.Place == "start" && closed:
		return "start-closed"
	case st.Place == "start":
		return "open"
	case st.Turn < 0:
		return "back"
	case st.Turn == 0 && closed && st.Clear:
		return "reverse"
	case st.Place == "thread":
		return "thread"
	case st.Clear && !closed:
		return "end-out"
	case st.Place == "gap":
		return "gap"
	case closed:
		return "end-closed"
	}
	return "end"
}

// beforeFirst is the same until the first pass has been cut.
func beforeFirst(b bench.Bench, st bench.Status) string {
	over := st.Place != "start"
	switch touched := b.AtTouch && b.Zeroed[1]; {
	case len(unset(b)) > 0 && st.Turn != 0:
		return "missing-turning"
	case len(unset(b)) > 0:
		return "missing"
	case !touched && st.Turn == 0:
		return "touch-start"
	case !touched && !over:
		return "touch-up"
	case !touched:
		return "touch"
	case over && !st.Clear:
		return "out"
	case over:
		return "return"
	case st.Turn == 0:
		return "power"
	case st.Clear:
		return "first"
	}
	return "start"
}

// standing is the same for work that stands still between passes.
func standing(b bench.Bench) string {
	switch {
	case b.PassesDone() == 1 && !tried(b, "count"):
		return "count"
	case b.Dirty:
		return "chips"
	case goesNow(b):
		return "fits"
	}
	return "standing"
}

// goesNow reports whether the last try, with no pass since, went as it should.
func goesNow(b bench.Bench) bool {
	for _, e := range slices.Backward(b.Log) {
		if _, _, whole := e.Event.WholePass(); whole || e.Event.Verb == "close" {
			return false
		}
		for _, h := range e.Happened {
			if h.Name == "test-mate-goes" || h.Name == "test-go-goes" {
				return true
			}
		}
	}
	return false
}

// tried reports whether a move has been made.
func tried(b bench.Bench, verb string) bool {
	return slices.ContainsFunc(b.Log, func(e bench.Entry) bool { return e.Event.Verb == verb })
}
