package main

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/lessons/record"
)

// noRecord is the --record that keeps nothing.
const noRecord = "none"

// recordPath is where answers are kept: --record, or the user's data folder.
func (a *app) recordPath() (string, error) {
	if a.recordFile != "" {
		return a.recordFile, nil
	}
	dir, err := dataFolder()
	return filepath.Join(dir, "scratchpass", "record.db"), err
}

// dataFolder is where the system keeps what programs remember of a user.
func dataFolder() (string, error) {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		return os.UserConfigDir() // there it is the same folder
	}
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return dir, nil
	}
	home, err := os.UserHomeDir()
	return filepath.Join(home, ".local", "share"), err
}

// openRecord opens the learner's record; nil when none is kept.
func (a *app) openRecord() (*record.Record, error) {
	if a.recordFile == noRecord {
		return nil, nil
	}
	learner := strings.TrimSpace(content.Printable(a.learner))
	if learner == "" || len([]rune(learner)) > 60 {
		return nil, usage("--learner %.70q: give a name of up to 60 letters", a.learner)
	}
	path, err := a.recordPath()
	if err != nil {
		return nil, fmt.Errorf("no folder for the record: %w; give --record FILE, or --record none", err)
	}
	r, err := record.Open(path, learner)
	if err != nil {
		return nil, fmt.Errorf("the record %q can't be opened: %w; give --record FILE, or --record none", path, err)
	}
	a.closers = append(a.closers, r.Close)
	return r, nil
}

// keepAnswers lets a session write into the learner's record.
func (a *app) keepAnswers(s *lessons.Session) (*record.Record, error) {
	r, err := a.openRecord()
	if r == nil || err != nil {
		return nil, err
	}
	if r.SetAside != "" {
		fmt.Fprintln(a.err, s.RecordSetAside(r.SetAside))
	}
	s.Book, err = lessons.NewBook(r, s.System)
	return r, err
}

// summaries is what the learner's record holds of each task.
func (a *app) summaries() (map[string]record.Summary, error) {
	of, _, err := a.record.Summaries()
	return of, err
}
