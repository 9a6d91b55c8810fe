package rehearse

import (
	"bytes"
	"time"

	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
)

// resume goes on with a rehearsal of the same job that was broken off: a person is
// asked, by pipe --go-on says it.
func (c *call) resume(s *sitting.Session, h *rehearsal.Rehearsal, text []byte, person bool) (bool, error) {
	played, ok := brokenOff(h, text)
	if !ok {
		return false, nil
	}
	if played.Bench.Live && !(rehearsal.Flow{Session: s}).HasClock() {
		return false, nil // its clock is real; here there is none
	}
	switch {
	case c.goOn:
	case !person:
		return false, nil
	default:
		flow := rehearsal.Flow{Session: s}
		if yes, err := flow.GoOnWith(h.Name, len(played.Bench.Log)); err != nil || !yes {
			return false, err
		}
	}
	h.Bench, h.TakenBack = played.Bench, played.TakenBack
	return true, nil
}

// brokenOff plays a log of the same job up to where it was broken off. One that is over,
// or was written by another version, is none: it stays readable until a new one begins.
func brokenOff(h *rehearsal.Rehearsal, text []byte) (played bench.Replayed, ok bool) {
	played, ok = playedLog(h, text)
	return played, ok && !played.Bench.Over && len(played.Bench.Log) > 0
}

// playedLog plays a log of the same job.
func playedLog(h *rehearsal.Rehearsal, text []byte) (played bench.Replayed, ok bool) {
	const name = "log"                              // errors of it are not told
	text = text[:bytes.LastIndexByte(text, '\n')+1] // half a line is no line
	script, err := bench.ParseScript(name, text)
	if err != nil || script.Job != h.Name || script.As != h.As || script.Lathe != h.Lathe {
		return played, false
	}
	played, err = script.Replay(name, h.Bench.Job)
	return played, err == nil
}

// finishLeft has a rehearsal kept whose log is over and that the record still has as begun: the
// program was stopped between the two. written is when the log was.
func finishLeft(s *sitting.Session, h *rehearsal.Rehearsal, text []byte, written time.Time) error {
	played, ok := playedLog(h, text)
	if !ok || !played.Bench.Over {
		return nil
	}
	left := *h
	left.Bench, left.TakenBack = played.Bench, played.TakenBack
	return rehearsal.Flow{Session: s}.FinishLeft(&left, written)
}
