package rehearse

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/files"
)

// moveLog is where every move of a rehearsal is written down at once, so that one that
// is broken off can go on.
type moveLog struct {
	path    string       // empty where nothing is kept
	resumed bool         // it has the moves of an earlier sitting
	file    *os.File     // nil until the first move
	free    func() error // gives back the lock on the log; nil where nothing is kept

	session   *sitting.Session
	rehearsal *rehearsal.Rehearsal
	tell      func(text string) // says what became of an earlier log
}

// keepMoves has the moves of a rehearsal kept, and takes up those of an earlier sitting.
func (c *call) keepMoves(r *cli.Run, s *sitting.Session, h *rehearsal.Rehearsal) (*moveLog, error) {
	if err := r.NotOnTrial("--log", c.log); err != nil {
		return nil, err
	}
	if (r.RecordFile == cli.NoRecord || r.IsTrial()) && c.log == "" {
		return &moveLog{}, nil
	}
	path := c.log
	if path == "" {
		var err error
		if path, err = cli.LogFile(r.Learner, h.Name); err != nil {
			return &moveLog{}, nil // no home, no log
		}
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, err
	}
	if err := ordinaryLog(path); err != nil { // before a lock is put beside it
		return nil, err
	}
	l := &moveLog{path: path, session: s, rehearsal: h, tell: func(text string) { r.Tell(s, text) }}
	if err := l.lock(); err != nil {
		return nil, err
	}
	text, err := readLog(path)
	if err == nil {
		l.resumed, err = c.resume(s, h, path, text, s.Attended)
	}
	if err == nil && !l.resumed {
		err = finishLeft(s, h, path, text)
	}
	if err != nil {
		return nil, errors.Join(err, l.close())
	}
	if c.goOn && !l.resumed {
		r.Tell(s, s.Say("bench-nothing-to-go-on", "job", h.Name))
	}
	h.Keep = l.keep
	return l, nil
}

// lock keeps other rehearsals from the log for as long as this one goes on: the moves of
// two, mixed, would be the log of neither.
func (l *moveLog) lock() (err error) {
	l.free, err = files.Lock(l.path+cli.LogLockEnding, 0)
	if errors.Is(err, files.ErrHeld) {
		return errors.New(l.session.Say("bench-log-held", "where", l.path))
	}
	return err
}

// ordinaryLog is an error for what stands where the log is to be and is no ordinary file.
func ordinaryLog(path string) error {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err == nil && !info.Mode().IsRegular():
		return cli.Usagef("--log %q is no file: give the name of a file for the log", path)
	}
	return err
}

// readLog reads the log of an earlier rehearsal; nil where there is none. A file that is
// there and is no log is an error: it is not to be taken away.
func readLog(path string) ([]byte, error) {
	text, err := files.Read(path, files.MostMoves)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if script, _ := bench.ParseScript(path, text); err == nil && len(text) > 0 && script.Job == "" {
		return nil, cli.Usagef("--log %q is there already and is no log of a rehearsal: give another file", path)
	}
	return text, err
}

// keep writes one line. The file is opened for the first one: a rehearsal without a move
// takes no other's place.
func (l *moveLog) keep(line string) error {
	if l.file == nil {
		if err := l.open(); err != nil {
			return err
		}
	}
	if _, err := l.file.WriteString(line + "\n"); err != nil {
		return err
	}
	return l.file.Sync()
}

// open opens the log of a rehearsal that goes on, or begins a new one. What was there
// gets another name, and is told of.
func (l *moveLog) open() (err error) {
	if l.resumed {
		l.file, err = files.Append(l.path, files.TornMove)
		return err
	}
	aside, err := setAside(l.path)
	if err != nil {
		return err
	}
	if aside != "" {
		l.tell(l.session.Say("bench-log-aside", "where", aside))
	}
	f, err := files.Append(l.path, files.TornMove)
	if err != nil {
		return err
	}
	h := l.rehearsal
	begun := bench.New(h.Bench.Job)
	begun.Live = h.Bench.Live
	if _, err := f.WriteString(begun.Transcript(h.Name, h.As, h.Lathe)); err != nil {
		f.Close()
		return err
	}
	l.file = f
	return nil
}

// setAside gives the log of an earlier rehearsal another name, with the time it was last
// written: nothing is lost. It returns the name, "" where there was no log.
func setAside(path string) (aside string, err error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) || err == nil && info.Size() == 0 {
		return "", nil
	}
	if err != nil {
		return "", err
	}
	ending := filepath.Ext(path)
	aside = strings.TrimSuffix(path, ending) + "-" + info.ModTime().Format("20060102-150405.000") + ending
	return aside, os.Rename(path, aside)
}

func (l *moveLog) close() (err error) {
	if l.file != nil {
		err = l.file.Close()
	}
	if l.free != nil {
		err = errors.Join(err, l.free())
	}
	return err
}
