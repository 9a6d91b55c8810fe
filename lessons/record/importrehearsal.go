package record

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"scratchpass/content"
	"scratchpass/quiz/bench"
)

// What a rehearsal that is read in may be: a job is 1,500 moves long at most, and an hour or a
// night at the lathe, whoever played it.
const (
	mostMoves        = 15_000
	longestRehearsal = 1e6 // seconds
	mostKinds        = 200 // of mistakes, and of speeds
)

// isRehearsal reports whether a line of an export is a rehearsal, and no answer.
func isRehearsal(text []byte) bool {
	var probe struct {
		Job *string `json:"rehearsal"`
	}
	return json.Unmarshal(text, &probe) == nil && probe.Job != nil
}

// readRehearsal reads one line.
func readRehearsal(text []byte, now time.Time) (x Rehearsal, err error) {
	if err := json.Unmarshal(text, &x); err != nil {
		return x, err
	}
	late := now.Add(clocksDiffer)
	switch {
	case x.Job == "" || x.Thread == "" || x.At.IsZero() || x.Begun.IsZero():
		return x, errors.New("rehearsal, thread, begun and at are wanted")
	case !slices.Contains([]bench.Verdict{bench.Fits, bench.Binds, bench.Scrap}, x.Verdict):
		return x, fmt.Errorf("the verdict %.40q: give fits, binds or scrap", x.Verdict)
	case x.Begun.Before(earliest) || x.At.Before(earliest) || x.At.After(late) || x.Begun.After(late) || zoneOf(x.At) < westmost || zoneOf(x.At) > eastmost:
		return x, fmt.Errorf("begun %s, at %s: no rehearsal can have ended then", x.Begun.Format(time.RFC3339), x.At.Format(time.RFC3339))
	case !within(longestRehearsal, x.Seconds):
		return x, fmt.Errorf("seconds %v: give 0 to %g", x.Seconds, longestRehearsal)
	case !within(mostMoves, float64(x.Passes), float64(x.Hints)):
		return x, fmt.Errorf("passes %d, hints %d: give 0 to %d", x.Passes, x.Hints, mostMoves)
	case len(x.Mistakes) > mostKinds || len(x.Room.Speeds) > mostKinds:
		return x, fmt.Errorf("more than %d mistakes or speeds", mostKinds)
	}
	texts := []string{x.Job, x.JobSum, x.Thread}
	for _, m := range x.Mistakes {
		if texts = append(texts, m.Name); m.Name == "" || !within(mostMoves, float64(m.Times), float64(m.TakenBack)) || m.Times+m.TakenBack == 0 {
			return x, fmt.Errorf("the mistake %.40q, %d and %d times: give a name, and how often it was made", m.Name, m.Times, m.TakenBack)
		}
	}
	for _, text := range texts {
		if text != content.Printable(text) || len([]rune(text)) > longestText {
			return x, fmt.Errorf("%.40q has signs that can't be printed, or more than %d letters", text, longestText)
		}
	}
	return x, x.Room.check()
}

// check returns an error for what no passes can have left.
func (r Room) check() error {
	counts, ways := []float64{float64(r.Passes)}, []Way{r.Shortest, r.Median}
	for _, s := range r.Speeds {
		counts, ways = append(counts, float64(s.Passes), s.RPM), append(ways, s.Shortest, s.Longest)
	}
	for _, w := range ways {
		counts = append(counts, w.Inches, w.Seconds)
	}
	if !within(longestRehearsal, counts...) {
		return fmt.Errorf("room %+v: give numbers from 0 up", r)
	}
	return nil
}

// within reports whether numbers lie from 0 to most.
func within(most float64, numbers ...float64) bool {
	return !slices.ContainsFunc(numbers, func(x float64) bool { return math.IsNaN(x) || x < 0 || x > most })
}
