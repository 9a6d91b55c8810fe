package record

import (
	"bytes"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"scratchpass/quiz/files"
)

// exportsEnding is the ending of the list of the files that answers were written to. It lies
// beside the record, so that it can be added to where the record itself can't be.
const exportsEnding = ".exports"

// mostExports is the longest list that is read, in bytes.
const mostExports = 1 << 20

// written is one line of that list.
type written struct {
	Learner string    `json:"learner"`
	Path    string    `json:"path"`
	At      time.Time `json:"at"`
}

// NoteExport notes where a learner's answers are about to be written, beside the record at a
// path, so that Forget can name the file. What is no file, such as a terminal, is not noted.
func NoteExport(recordPath, learner, to string) error {
	if info, err := os.Stat(to); err == nil && !info.Mode().IsRegular() {
		return nil
	}
	whole, err := filepath.Abs(to)
	if err != nil {
		return err
	}
	line, err := json.Marshal(written{learner, whole, time.Now().UTC().Truncate(time.Second)})
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(recordPath), 0o700); err != nil {
		return err
	}
	f, err := files.Append(recordPath+exportsEnding, files.TornAnswer)
	if err != nil {
		return err
	}
	_, err = f.Write(append(line, '\n'))
	return errors.Join(err, f.Close())
}

// exported are the files that a learner's answers were written to, and the lines of the list
// about others.
func (r *Record) exported() (paths []string, others []byte, err error) {
	text, err := files.Read(r.path+exportsEnding, mostExports)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil, nil
	}
	for line := range bytes.Lines(text) {
		var w written
		switch {
		case json.Unmarshal(line, &w) != nil: // torn
		case w.Learner != r.Learner:
			others = append(others, line...)
		case !slices.Contains(paths, w.Path):
			paths = append(paths, w.Path)
		}
	}
	return paths, others, err
}

// forgetExports deletes what killed exports of the learner's have left where they were to be
// written, and takes the learner out of the list. It returns the exports that are there.
func (r *Record) forgetExports(f *Forgotten) error {
	paths, others, err := r.exported()
	if err != nil || paths == nil {
		return err
	}
	var searched []string
	for _, path := range paths {
		if _, err := os.Lstat(path); err == nil {
			f.Left = append(f.Left, path)
		}
		dir := filepath.Dir(path)
		if slices.Contains(searched, dir) {
			continue
		}
		searched = append(searched, dir)
		left, _ := beside(path, leftover) // a folder that is gone has none
		for _, path := range left {
			if !r.holdsMine(path) {
				continue
			}
			if err := remove(path); err != nil {
				return err
			}
			f.Deleted = append(f.Deleted, path)
		}
	}
	if len(others) == 0 {
		return remove(r.path + exportsEnding)
	}
	return files.WriteWhole(r.path+exportsEnding, func(w *os.File) error { _, err := w.Write(others); return err })
}

// holdsMine reports whether a file begins as an export of the learner's.
func (r *Record) holdsMine(path string) bool {
	f, err := files.Open(path, files.MostAnswers)
	if err != nil {
		return false
	}
	defer f.Close()
	begin := make([]byte, longestLine)
	n, _ := f.Read(begin) // of nothing it is nothing
	line, _, _ := bytes.Cut(begin[:n], []byte("\n"))
	name, err := json.Marshal(r.Learner)
	return err == nil && bytes.HasPrefix(line, append([]byte(`{"learner":`), name...))
}
