package rehearse

import (
	"strings"
	"time"

	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
)

// moveLog is where every move of a rehearsal is written down at once, so that one that
// is broken off can go on.
type moveLog struct {
	kept    keeper // nil where nothing is kept
	resumed bool   // it has the moves of an earlier sitting
	open    bool   // lines can be added to it

	session   *sitting.Session
	rehearsal *rehearsal.Rehearsal
}

// keeper keeps the lines of logs, one log of a job at a time: in a file of one computer, or in a record
// with others'. Lines that were taken without an error survive whatever happens next.
type keeper interface {
	read() (text []byte, written time.Time, err error) // the log of the job's last rehearsal; no text where there is none
	goOn() error                                       // lines are added to that one from now on
	begin(lines []string) error                        // another one with its first lines; the one before is set aside, and that is told
	add(lines []string) error                          // all of them or none
	close() error
}

// takeUp takes up the moves of an earlier sitting, and finishes what a program that was stopped has
// left to do.
func (l *moveLog) takeUp(c *call) error {
	text, written, err := l.kept.read()
	if err == nil {
		l.resumed, err = c.resume(l.session, l.rehearsal, text, l.session.Attended)
	}
	if err == nil && !l.resumed {
		err = finishLeft(l.session, l.rehearsal, text, written)
	}
	return err
}

// keep writes lines. The log is opened for the first ones: a rehearsal without a move takes no other's
// place.
func (l *moveLog) keep(lines ...string) (err error) {
	switch {
	case l.open:
		return l.kept.add(lines)
	case l.resumed:
		if err = l.kept.goOn(); err == nil {
			err = l.kept.add(lines)
		}
	default:
		err = l.kept.begin(append(l.head(), lines...))
	}
	l.open = err == nil
	return err
}

// head are the first lines of a log: of what it is one.
func (l *moveLog) head() []string {
	h := l.rehearsal
	begun := bench.New(h.Bench.Job)
	begun.Live = h.Bench.Live
	return strings.Split(strings.TrimSuffix(begun.Transcript(h.Name, h.As, h.Lathe), "\n"), "\n")
}

func (l *moveLog) close() error {
	if l.kept == nil {
		return nil
	}
	return l.kept.close()
}

// where names the file of the log; empty where there is none.
func (l *moveLog) where() string {
	if file, ok := l.kept.(*fileLog); ok {
		return file.path
	}
	return ""
}
