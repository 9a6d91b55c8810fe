package record

import (
	"bufio"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"time"

	"scratchpass/content"
	"scratchpass/quiz/answer"
)

// longestLine is the longest line of an export that is read, in bytes.
const longestLine = 64 << 10

// What an answer that is read in may be.
const (
	longestGiven   = 200  // letters; longer ones were cut when they were kept
	longestText    = 1000 // letters of anything else
	longestSeconds = 600  // longer is no time on the task, and is never kept
)

// clocksDiffer is by how much the clock of another computer may be fast.
const clocksDiffer = 10 * time.Minute

// The zones that there are, in seconds east of Greenwich.
const (
	westmost = -12 * 3600
	eastmost = 14 * 3600
)

// earliest is before any answer was given.
var earliest = time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)

// Marker marks an answer anew, from the code of its problem and what was typed. ErrOtherProblem
// says that the code makes another problem now.
type Marker func(a Answer) (Answer, error)

// ErrOtherProblem says that the code of an answer makes another problem now than the one that
// was answered, so that it can't be marked anew.
var ErrOtherProblem = errors.New("its code makes another problem now")

// Imported is what came of reading answers in.
type Imported struct {
	Added   int   // answers that are new
	Known   int   // that were there already
	Changed int   // of those that are new: with another verdict now than in the file
	LeftOut []int // the lines whose problem is another one now

	Rehearsals      int // that are new
	RehearsalsKnown int // that were there already
}

// Import reads answers and rehearsals from JSON lines into the learner's record, and no logs of moves,
// marks each answer anew and makes the summaries anew, all or nothing; whose they were does not matter.
// What is there already is left out and counted as known, so that the same export may be read
// twice. What can't be an answer or a rehearsal is an error that names the line. now is when it is done: no answer
// was given later.
func (r *Record) Import(in io.Reader, mark Marker, fold Fold, now time.Time) (i Imported, err error) {
	err = r.change(func(tx *sql.Tx) error {
		if i, err = readIn(tx, in, r.Learner, mark, now); err != nil {
			return err
		}
		return refold(tx, r.Learner, fold)
	})
	if err != nil {
		return Imported{}, fmt.Errorf("%w; nothing was read in", err)
	}
	return i, nil
}

func readIn(tx *sql.Tx, in io.Reader, learner string, mark Marker, now time.Time) (i Imported, err error) {
	last, _, err := newest(tx, learner)
	if err != nil {
		return i, err
	}
	scanner := bufio.NewScanner(in)
	scanner.Buffer(nil, longestLine)
	line := 1
	for ; scanner.Scan(); line++ {
		if no, err := i.readInOther(tx, scanner.Bytes(), learner, now); err != nil {
			return i, fmt.Errorf("line %d is no rehearsal: %w", line, err)
		} else if no {
			continue
		}
		a, err := readAnswer(scanner.Bytes(), now)
		if err != nil {
			return i, fmt.Errorf("line %d is no answer: %w", line, err)
		}
		a.Learner = learner
		there, err := has(tx, a)
		if err != nil {
			return i, err
		}
		if there {
			i.Known++
			continue
		}
		marked, err := mark(a)
		if errors.Is(err, ErrOtherProblem) {
			i.LeftOut = append(i.LeftOut, line)
			continue
		}
		if err != nil {
			return i, fmt.Errorf("line %d is no answer: %w", line, err)
		}
		if marked.Verdict != a.Verdict {
			i.Changed++
		}
		last++
		if err := insert(tx, marked, last); err != nil {
			return i, err
		}
		i.Added++
	}
	if err := scanner.Err(); errors.Is(err, bufio.ErrTooLong) {
		return i, fmt.Errorf("line %d is no answer: it has more than %d bytes", line, longestLine)
	} else if err != nil {
		return i, err
	}
	return i, nil
}

// readInOther reads one line if it is no answer: a rehearsal, or what counts for nothing.
func (i *Imported) readInOther(tx *sql.Tx, text []byte, learner string, now time.Time) (no bool, err error) {
	switch {
	case len(text) == 0 || isLog(text):
		return true, nil
	case isRehearsal(text):
		return true, i.readInRehearsal(tx, text, learner, now)
	}
	return false, nil
}

// readInRehearsal reads one line that is a rehearsal.
func (i *Imported) readInRehearsal(tx *sql.Tx, text []byte, learner string, now time.Time) error {
	x, err := readRehearsal(text, now)
	if err != nil {
		return err
	}
	x.Learner = learner
	added, err := addRehearsal(tx, x)
	switch {
	case err != nil:
		return err
	case added:
		i.Rehearsals++
	default:
		i.RehearsalsKnown++
	}
	return nil
}

// readAnswer reads one line.
func readAnswer(text []byte, now time.Time) (a Answer, err error) {
	if err := json.Unmarshal(text, &a); err != nil {
		return a, err
	}
	switch {
	case a.Task == "" || a.Code == "" || a.Verdict == "" || a.At.IsZero():
		return a, errors.New("task, code, verdict and at are wanted")
	case !slices.Contains(answer.Verdicts, a.Verdict):
		return a, fmt.Errorf("the verdict %.40q: give one of %v", a.Verdict, answer.Verdicts)
	case a.At.Before(earliest) || a.At.After(now.Add(clocksDiffer)) || zoneOf(a.At) < westmost || zoneOf(a.At) > eastmost:
		return a, fmt.Errorf("at %s: no answer can have been given then", a.At.Format(time.RFC3339))
	case a.Certainty != answer.NotAsked && !slices.Contains(answer.Certainties, a.Certainty):
		return a, fmt.Errorf("the certainty %.40q: give one of %v", a.Certainty, answer.Certainties)
	case !(a.Seconds >= 0 && a.Seconds <= longestSeconds):
		return a, fmt.Errorf("seconds %v: give 0 to %d", a.Seconds, longestSeconds)
	case !(a.Points >= 0 && a.Points <= 1):
		return a, fmt.Errorf("points %v: give 0 to 1", a.Points)
	case len([]rune(a.Given)) > longestGiven:
		return a, fmt.Errorf("given has more than %d letters", longestGiven)
	}
	for _, text := range []string{a.Given, a.Task, a.Code, a.Slip, a.Cause, a.Situation, a.Key, a.Content} {
		if text != content.Printable(text) || len([]rune(text)) > longestText {
			return a, fmt.Errorf("%.40q has signs that can't be printed, or more than %d letters", text, longestText)
		}
	}
	return a, nil
}

// has reports whether the learner gave this answer to this problem at this time already.
func has(tx *sql.Tx, a Answer) (there bool, err error) {
	err = tx.QueryRow("SELECT EXISTS (SELECT 1 FROM answers WHERE learner = $1 AND at_ms = $2 AND code = $3 AND given = $4)",
		a.Learner, a.At.UnixMilli(), a.Code, a.Given).Scan(&there)
	return there, err
}
