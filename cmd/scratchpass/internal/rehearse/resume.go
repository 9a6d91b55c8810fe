package rehearse

import (
	"bytes"
	"os"

	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
)

// resume goes on with a rehearsal of the same job that was broken off: a person is
// asked, by pipe --go-on says it.
func (c *call) resume(s *sitting.Session, h *rehearsal.Rehearsal, path string, text []byte, person bool) (bool, error) {
	played, ok := brokenOff(h, path, text)
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
func brokenOff(h *rehearsal.Rehearsal, path string, text []byte) (played bench.Replayed, ok bool) {
	played, ok = playedLog(h, path, text)
	return played, ok && !played.Bench.Over
}

// playedLog plays a log of the same job that has moves in it.
func playedLog(h *rehearsal.Rehearsal, path string, text []byte) (played bench.Replayed, ok bool) {
	text = text[:bytes.LastIndexByte(text, '\n')+1] // half a line is no line
	script, err := bench.ParseScript(path, text)
	if err != nil || script.Job != h.Name || script.As != h.As || script.Lathe != h.Lathe || len(script.Lines) == 0 {
		return played, false
	}
	played, err = script.Replay(path, h.Bench.Job)
	return played, err == nil && len(played.Bench.Log) > 0
}

// finishLeft has a rehearsal kept whose log is over and that the record still has as begun: the
// program was stopped between the two.
func finishLeft(s *sitting.Session, h *rehearsal.Rehearsal, path string, text []byte) error {
	played, ok := playedLog(h, path, text)
	if !ok || !played.Bench.Over {
		return nil
	}
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	left := *h
	left.Bench, left.TakenBack = played.Bench, played.TakenBack
	return rehearsal.Flow{Session: s}.FinishLeft(&left, info.ModTime())
}
