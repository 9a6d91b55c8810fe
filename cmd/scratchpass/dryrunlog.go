package main

import (
	"bytes"
	"errors"
	"fmt"
	"hash/crc32"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/files"
)

// logPath is where the log of a rehearsal is kept.
func (a *app) logPath(given, job string) (string, error) {
	if given != "" {
		return given, nil
	}
	dir, err := dataFolder()
	if err != nil {
		return "", err
	}
	return filepath.Join(dir, "scratchpass", "dryrun-"+safeName(a.learner)+"-"+safeName(filepath.Base(job))+".log"), nil
}

// safeName makes a file name of a person's name. Letters that a file name had better
// not have are left out, and a sum over the name keeps two such names apart.
func safeName(name string) string {
	safe := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return '_'
	}, name)
	if safe != name {
		safe += fmt.Sprintf("-%08x", crc32.ChecksumIEEE([]byte(name)))
	}
	return safe
}

// keepLog lets every move be written down at once, so that a rehearsal that is broken
// off can go on. It returns where, or "" when nothing is kept, and how to end it.
func (a *app) keepLog(s *lessons.Session, r *lessons.Rehearsal, given string) (where string, end func() error, err error) {
	nothing := func() error { return nil }
	if a.recordFile == noRecord && given == "" {
		return "", nothing, nil
	}
	path, err := a.logPath(given, r.Name)
	if err != nil {
		return "", nothing, nil // no home, no log
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return "", nil, err
	}
	text, err := readLog(path)
	if err != nil {
		return "", nil, err
	}
	resumed, err := a.resume(s, r, path, text)
	if err != nil {
		return "", nil, err
	}
	if a.goOn && !resumed {
		fmt.Fprintln(a.err, s.Say("bench-nothing-to-go-on", "job", r.Name))
	}
	var f *os.File
	r.Keep = func(line string) error {
		if f == nil { // only now: a rehearsal without a move takes no other's place
			if f, err = a.openLog(s, r, path, resumed); err != nil {
				return err
			}
		}
		if _, err := f.WriteString(line + "\n"); err != nil {
			return err
		}
		return f.Sync()
	}
	return path, func() error {
		if f == nil {
			return nil
		}
		return f.Close()
	}, nil
}

// openLog opens the log of a rehearsal that goes on, or begins a new one. What was there
// gets another name, and is told of.
func (a *app) openLog(s *lessons.Session, r *lessons.Rehearsal, path string, resumed bool) (*os.File, error) {
	if resumed {
		return files.Append(path, files.TornMove)
	}
	aside, err := setAside(path)
	if err != nil {
		return nil, err
	}
	if aside != "" {
		fmt.Fprintln(a.err, s.Say("bench-log-aside", "where", aside))
	}
	f, err := files.Append(path, files.TornMove)
	if err != nil {
		return nil, err
	}
	begun := bench.New(r.Bench.Job)
	begun.Live = r.Bench.Live
	if _, err := f.WriteString(begun.Transcript(r.Name, r.As, r.Lathe)); err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

// readLog reads the log of an earlier rehearsal; nil where there is none. A file that is
// there and is no log is an error: it is not to be taken away.
func readLog(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, usage("--log %q is no file: give the name of a file for the log", path)
	}
	text, err := os.ReadFile(path)
	if script, _ := bench.ParseScript(path, text); err == nil && len(text) > 0 && script.Job == "" {
		return nil, usage("--log %q is there already and is no log of a rehearsal: give another file", path)
	}
	return text, err
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

// resume goes on with a rehearsal of the same job that was broken off: a person is
// asked, by pipe --go-on says it.
func (a *app) resume(s *lessons.Session, r *lessons.Rehearsal, path string, text []byte) (bool, error) {
	text = text[:bytes.LastIndexByte(text, '\n')+1] // half a line is no line
	script, err := bench.ParseScript(path, text)
	if err != nil || script.Job != r.Name || script.As != r.As || script.Lathe != r.Lathe || len(script.Lines) == 0 {
		return false, nil
	}
	played, err := script.Replay(path, r.Bench.Job)
	if err != nil || played.Bench.Over || len(played.Bench.Log) == 0 { // over, or written by another version: it stays readable until the new one begins
		return false, nil
	}
	if _, live := s.Terminal.(lessons.Stage); script.Live && !live {
		return false, nil // its clock is real; here there is none
	}
	if _, person := tty(a.in); person && !a.goOn {
		yes, err := s.GoOnWith(r.Name, len(played.Bench.Log))
		if err != nil || !yes {
			return false, err
		}
	} else if !a.goOn {
		return false, nil
	}
	r.Bench, r.TakenBack = played.Bench, played.TakenBack
	return true, nil
}

// scriptJob is the job of a script: the one it carries, one that ships, or a file beside
// the script.
func (a *app) scriptJob(lib *content.Library, path string, script bench.Script) (job bench.Job, err error) {
	own, _, err := a.lathe()
	if err != nil {
		return job, err
	}
	var written content.Job
	if script.As == "" {
		name := script.Job
		if _, err := lib.Job(name); content.ErrNotThere(err) && !filepath.IsAbs(name) {
			name = filepath.Join(filepath.Dir(path), name)
		}
		if written, err = readJob(lib, name); err != nil {
			return job, err
		}
	}
	if job, err = script.ReadJob(path, written, own); err != nil {
		err = usage("job %s: %w", script.Job, err)
	}
	return job, err
}

// playScript plays a log from beginning to end and tells what came of it.
func (a *app) playScript(lib *content.Library, path string) error {
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	script, err := bench.ParseScript(path, text)
	if err != nil {
		return usageError{err}
	}
	job, err := a.scriptJob(lib, path, script)
	if err != nil {
		return err
	}
	played, err := script.Replay(path, job)
	if err != nil {
		return usageError{err}
	}
	words, err := lib.Bench()
	if err != nil {
		return err
	}
	if a.json {
		return a.print(played.Document(script.Job, words))
	}
	s, err := a.open()
	if err != nil {
		return err
	}
	return s.Terminal.Show(s.Played(played, words))
}
