package rehearse

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/files"
)

// fileLog keeps a log in a file of this computer.
type fileLog struct {
	path string
	file *os.File     // nil until the first move
	free func() error // gives back the lock on the log
	tell func(phrase string, pairs ...any)
}

// keepMoves has the moves of a rehearsal kept in a file, and takes up those of an earlier sitting.
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
	file, err := openFileLog(s, path, func(phrase string, pairs ...any) { r.Tell(s, s.Say(phrase, pairs...)) })
	if err != nil {
		return nil, err
	}
	l := &moveLog{kept: file, session: s, rehearsal: h}
	if err := l.takeUp(c); err != nil {
		return nil, errors.Join(err, l.close())
	}
	if c.goOn && !l.resumed {
		r.Tell(s, s.Say("bench-nothing-to-go-on", "job", h.Name))
	}
	h.Keep = l.keep
	return l, nil
}

// openFileLog keeps other rehearsals from the log for as long as this one goes on: the moves of
// two, mixed, would be the log of neither.
func openFileLog(s *sitting.Session, path string, tell func(phrase string, pairs ...any)) (*fileLog, error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, err
	}
	if err := ordinaryLog(path); err != nil { // before a lock is put beside it
		return nil, err
	}
	free, err := files.Lock(path+cli.LogLockEnding, 0)
	if errors.Is(err, files.ErrHeld) {
		return nil, errors.New(s.Say("bench-log-held", "where", path))
	}
	return &fileLog{path: path, free: free, tell: tell}, err
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

// read reads the log of an earlier rehearsal. A file that is there and is no log is an error: it is not
// to be taken away.
func (f *fileLog) read() (text []byte, written time.Time, err error) {
	text, err = files.Read(f.path, files.MostMoves)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, written, nil
	}
	if err != nil {
		return nil, written, err
	}
	if script, _ := bench.ParseScript(f.path, text); len(text) > 0 && script.Job == "" {
		return nil, written, cli.Usagef("--log %q is there already and is no log of a rehearsal: give another file", f.path)
	}
	info, err := os.Stat(f.path)
	if err != nil {
		return nil, written, err
	}
	return text, info.ModTime(), nil
}

func (f *fileLog) goOn() (err error) {
	f.file, err = files.Append(f.path, files.TornMove)
	return err
}

func (f *fileLog) begin(lines []string) error {
	aside, err := setAside(f.path)
	if err != nil {
		return err
	}
	if aside != "" {
		f.tell("bench-log-aside", "where", aside)
	}
	if err := f.goOn(); err != nil {
		return err
	}
	return f.add(lines)
}

func (f *fileLog) add(lines []string) error {
	if _, err := f.file.WriteString(strings.Join(lines, "\n") + "\n"); err != nil {
		return err
	}
	return f.file.Sync()
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

func (f *fileLog) close() (err error) {
	if f.file != nil {
		err = f.file.Close()
	}
	return errors.Join(err, f.free())
}
