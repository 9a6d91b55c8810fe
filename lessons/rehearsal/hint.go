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
	if look == "scrap" && !r.mayTakeBack() {
		look = "scrap-stays"
	}
	setUp := unset(r.Bench)
	if len(setUp) > 0 && setUp[0] == "angle" && r.Bench.SwungWrong() && (look == "missing" || look == "missing-turning") {
		return s.Say("bench-hint-"+look+"-swung", "side", r.Bench.Job.Swing(), "n", len(setUp)-1)
	}
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
	case b.CountedOther() && !st.Nut && (st.Clear || st.Place == "start"):
		return "count-other"
	case st.Place != "start" && !st.Clear:
		return "out"
	case st.Place != "start" && !st.Nut:
		return "return"
	case st.Turn == 0:
		return standing(b)
	case b.PassesDone() == 1 && !tried(b, "count"):
		return "count"
	case b.AtLeave() && whenToTry(b) != "":
		return whenToTry(b)
	case st.Clear:
		return "feed"
	}
	return "start"
}

// whenToTry is the same where the compound has come to where it is left, before the start of
// the thread: a spring pass, then a try, then straight in. It is empty where the tool was fed
// anew: then a pass comes first.
func whenToTry(b bench.Bench) string {
	switch last := b.Passes[b.PassesDone()-1]; {
	case fedSince(b):
		return ""
	case tryOf(b) == "goes":
		return "fits"
	case tryOf(b) != "":
		return "straight-in"
	case last.Spring:
		return "try"
	}
	return "spring"
}

// fedSince reports whether a slide was fed since the last pass: it stands at a new depth, or is
// on its way there.
func fedSince(b bench.Bench) bool {
	for _, e := range slices.Backward(b.Log) {
		if cuts(e) {
			return false
		}
		if v := e.Event.Verb; v == "compound" || v == "cross" && e.Event.Word != b.Away.Word {
			return true
		}
	}
	return false
}

// cuts reports whether a move lets the tool run through the thread.
func cuts(e bench.Entry) bool {
	_, _, whole := e.Event.WholePass()
	return whole || e.Event.Verb == "close" || e.Event.Verb == "run"
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
	case over && b.Touches():
		return "touched-out"
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
	case tryOf(b) == "goes":
		return "fits"
	case b.AtLeave() && tryOf(b) != "":
		return "straight-in"
	case b.AtLeave():
		return "try-now"
	}
	return "standing"
}

// tryOf is what the last try with the mate or the go gauge came to, with no pass since: "goes",
// "no", or nothing where there was none.
func tryOf(b bench.Bench) string {
	for _, e := range slices.Backward(b.Log) {
		if cuts(e) {
			return ""
		}
		for _, h := range e.Happened {
			switch h.Name {
			case "test-mate-goes", "test-go-goes", "gauge-goes":
				return "goes"
			case "test-mate-binds", "test-mate-no-start", "test-go-binds", "test-go-no-start", "gauge-binds", "gauge-no-start":
				return "no"
			}
		}
	}
	return ""
}

// tried reports whether a move has been made.
func tried(b bench.Bench, verb string) bool {
	return slices.ContainsFunc(b.Log, func(e bench.Entry) bool { return e.Event.Verb == verb })
}
