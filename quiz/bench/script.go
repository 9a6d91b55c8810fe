package bench

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Script is a job and what was done at it, as it is written down: a log to replay or
// to mark.
//
//	# a comment
//	job adjusting-screw
//	as {"thread": ...}  (a job that does not ship, as its file would have it, on one line)
//	lathe {"name": ...} (the lathe that it was done on, where that is another)
//	hands real          (the log of live timing: no time is added for the hands)
//	key out
//	start
//	...
type Script struct {
	Job   string // its name, or a file
	As    string // the job itself, on one line; empty for one that is found by its name
	Lathe string // the lathe, on one line; empty for the job's own
	Live  bool
	Lines []Line // undo is a line too: it takes back the move before it
}

// Undo is the line that takes back the one before it.
const Undo = "undo"

// Line is one event of a script.
type Line struct {
	Number int
	Text   string
}

// The longest script that is read.
const (
	mostScript = 1 << 20         // bytes
	mostLines  = 10 * mostEvents // moves, those that are taken back again among them
	mostWrong  = 50              // errors that are told at once
	mostName   = 4096            // bytes of the name of a job, which may be that of a file
)

// ParseScript reads a script, without its events: their numbers are in the units of the
// job's lathe. name stands in front of what is wrong.
func ParseScript(name string, text []byte) (Script, error) {
	var s Script
	if len(text) > mostScript {
		return s, fmt.Errorf("%s: longer than a megabyte; a script is a job and a list of events", name)
	}
	var errs wrongLines
	moves := 0
	lines := bufio.NewScanner(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff"))))
	lines.Buffer(nil, mostScript+1)
	for n := 1; lines.Scan(); n++ {
		line := strings.TrimSpace(lines.Text())
		word, rest, _ := strings.Cut(line, " ")
		rest = strings.TrimSpace(rest)
		switch {
		case line == "" || strings.HasPrefix(line, "#"):
		case word == "job" && s.Job != "":
			errs = append(errs, fmt.Errorf("%s:%d: a second job; a script has one", name, n))
		case word == "job" && len(rest) > mostName:
			errs = append(errs, fmt.Errorf("%s:%d: the name of the job is too long: give one that ships, or the name of a file", name, n))
		case word == "job":
			s.Job = content.Printable(rest)
		case line == Undo:
			if moves == 0 {
				errs = append(errs, fmt.Errorf("%s:%d: nothing was done that could be taken back", name, n))
				break
			}
			s.Lines, moves = append(s.Lines, Line{n, line}), moves-1
		case word == "as":
			s.As = rest
		case word == "lathe":
			s.Lathe = rest
		case word == "hands":
			if s.Live = rest == "real"; !s.Live {
				errs = append(errs, fmt.Errorf("%s:%d: hands %q: give hands real, or leave the line out", name, n, rest))
			}
		default:
			s.Lines, moves = append(s.Lines, Line{n, line}), moves+1
		}
	}
	switch {
	case lines.Err() != nil:
		errs = append(errs, fmt.Errorf("%s: %w", name, lines.Err()))
	case s.Job == "":
		errs = append(errs, fmt.Errorf("%s: no job: begin with a line such as job adjusting-screw", name))
	case len(s.Lines) > mostLines:
		errs = append(errs, fmt.Errorf("%s: %d events with those that are taken back: give at most %d", name, len(s.Lines), mostLines))
	case moves > mostEvents+1:
		errs = append(errs, fmt.Errorf("%s: %d events: give at most %d", name, moves, mostEvents))
	}
	return s, errs.join()
}

// wrongLines are the errors of a script, line by line.
type wrongLines []error

// join makes one error of them. Who mends so many will see the others next.
func (w wrongLines) join() error {
	if more := len(w) - mostWrong; more > 0 {
		w = append(w[:mostWrong:mostWrong], fmt.Errorf("and %d more", more))
	}
	return errors.Join(w...)
}

// OneLine writes a job or a lathe on one line, as a script carries it.
func OneLine(file any) (string, error) {
	text, err := yaml.Marshal(file)
	if err != nil {
		return "", err
	}
	var fields map[string]any
	if err := yaml.Unmarshal(text, &fields); err != nil {
		return "", err
	}
	line, err := json.Marshal(fields) // what is JSON is YAML too
	return string(line), err
}

// ReadJob reads the job of a script that carries it, on the lathe that it carries or on
// the learner's own.
func (s Script) ReadJob(name string, written content.Job, own machine.Lathe) (Job, error) {
	if s.As != "" {
		written = content.Job{}
		if err := content.Decode(name, []byte(s.As), &written); err != nil {
			return Job{}, err
		}
	}
	if s.Lathe != "" {
		l, err := machine.ParseLathe(name, []byte(s.Lathe))
		if err != nil {
			return Job{}, err
		}
		own, written.Lathe = l, ""
	}
	return ParseJob(written, own)
}

// Replayed is what came of a script.
type Replayed struct {
	Bench     Bench
	TakenBack []Mistake // mistakes of moves that were taken back
	Undone    int       // how many moves were
}

// Replay makes the moves of a script at its job, and takes back those that were taken
// back. The moves are in the units of the lathe's dials; all that can't be read come at
// once.
func (s Script) Replay(name string, j Job) (Replayed, error) {
	var r Replayed
	r.Bench = New(j)
	r.Bench.Live = s.Live
	var behind []earlier // what stood before each move that stands
	var errs wrongLines
	for _, line := range s.Lines {
		now := r.Bench
		if line.Text == Undo && len(behind) > 0 {
			last := len(behind) - 1
			r.Bench, behind = behind[last].of(now), behind[:last]
			r.TakenBack, r.Undone = append(r.TakenBack, now.Mistakes[len(r.Bench.Mistakes):]...), r.Undone+1
			continue
		}
		e, err := Parse(line.Text, j.System())
		if err != nil {
			errs = append(errs, fmt.Errorf("%s:%d: %w", name, line.Number, err))
			continue
		}
		behind = append(behind, now.short())
		r.Bench, _ = now.Step(e)
	}
	return r, errs.join()
}

// earlier is a bench that may be come back to, without its lists: they are the beginnings
// of those of every bench after it. With them, a long log would take a hundred megabytes.
type earlier struct {
	bench                                  Bench
	log, passes, mistakes, trials, margins int
}

func (b Bench) short() earlier {
	e := earlier{b, len(b.Log), len(b.Passes), len(b.Mistakes), len(b.Tests), len(b.Margins)}
	e.bench.Log, e.bench.Passes, e.bench.Mistakes, e.bench.Tests, e.bench.Margins = nil, nil, nil, nil, nil
	return e
}

// of is the bench as it was; now is one after it.
func (e earlier) of(now Bench) Bench {
	b := e.bench
	b.Log, b.Passes, b.Mistakes, b.Tests = first(now.Log, e.log), first(now.Passes, e.passes), first(now.Mistakes, e.mistakes), first(now.Tests, e.trials)
	b.Margins = first(now.Margins, e.margins)
	return b
}

// first are the first n of a list; nil where that is none, as in a bench that has had none.
func first[T any](of []T, n int) []T {
	if n == 0 {
		return nil
	}
	return of[:n]
}

// Play carries events out from the beginning.
func Play(j Job, live bool, events []Event) Bench {
	b := New(j)
	b.Live = live
	for _, e := range events {
		b, _ = b.Step(e)
	}
	return b
}

// Transcript writes down what was done, as ParseScript reads it. as and lathe are the
// job and its lathe on one line each, where the name does not tell them.
func (b Bench) Transcript(job, as, lathe string) string {
	var t strings.Builder
	fmt.Fprintf(&t, "job %s\n", job)
	if as != "" {
		fmt.Fprintf(&t, "as %s\n", as)
	}
	if lathe != "" {
		fmt.Fprintf(&t, "lathe %s\n", lathe)
	}
	if b.Live {
		t.WriteString("hands real\n")
	}
	for _, e := range b.Log {
		t.WriteString(e.Event.Write(b.Job.System()) + "\n")
	}
	return t.String()
}
