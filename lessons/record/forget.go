package record

import (
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"scratchpass/quiz/files"
)

// Forgotten is what came of forgetting a learner.
type Forgotten struct {
	Answers    int64    // how many were deleted
	Rehearsals int64    // the same
	Deleted    []string // other files that held some, and are gone
	Left       []string // files that may hold some and that the program may not touch: to be deleted by hand
}

// Forget deletes everything about the learner, makes sure that the file no longer holds
// it, and does so with the copies: that of an earlier day goes, a damaged record that was
// set aside goes unless there are others in it, and so does what a program that was killed has
// left. The files that answers were exported to are named. Where the file can't be cleaned,
// because another program is reading it for instance, the error says so; to forget again is
// no harm.
func (r *Record) Forget() (f Forgotten, err error) {
	if r.ReadOnly {
		return f, ErrReadOnly
	}
	if r.shared {
		err = r.change(func(tx *sql.Tx) error { return r.forgetRows(tx, &f) })
		return f, err
	}
	// Before the answers: what a mending finds in the copy comes back.
	if err := remove(r.path + copyEnding); err != nil {
		return f, err
	}
	passing("the copy is forgotten")
	if err = r.change(func(tx *sql.Tx) error { return r.forgetRows(tx, &f) }); err != nil {
		return Forgotten{}, fmt.Errorf("nothing is deleted yet but the copy of the day: %w; forget once more when that is mended", err)
	}
	passing("the answers are deleted")
	// What was deleted is taken out of the pages of the file.
	err = r.plainly(func() error { _, err := r.db.Exec("VACUUM"); return err })
	if err == nil {
		err = r.forgetCopies(&f)
	}
	if err != nil {
		return f, fmt.Errorf("the answers are deleted, but a file may still hold what they were: %w; forget once more when no other program has the record open", err)
	}
	return f, nil
}

// forgetRows deletes what there is of the learner, in every table.
func (r *Record) forgetRows(tx *sql.Tx, f *Forgotten) error {
	deleted := map[string]int64{}
	for _, table := range slices.Sorted(maps.Keys(copied)) {
		result, err := tx.Exec("DELETE FROM "+table+" WHERE learner = $1", r.Learner)
		if err != nil {
			return err
		}
		if deleted[table], err = result.RowsAffected(); err != nil {
			return err
		}
	}
	f.Answers, f.Rehearsals = deleted["answers"], deleted["rehearsals"]
	return nil
}

// forgetCopies deletes what lies beside the record, alone with it.
func (r *Record) forgetCopies(f *Forgotten) (err error) {
	passing("the file is clean")
	if err := r.free(); err != nil {
		return err
	}
	r.free = func() error { return nil }
	alone, err := files.Lock(r.path+lockEnding, openWait)
	if errors.Is(err, files.ErrHeld) {
		return err
	}
	if err == nil {
		defer func() {
			err = errors.Join(err, alone())
			if free, e := files.LockShared(r.path+lockEnding, openWait); e == nil {
				r.free = free
			}
		}()
	}
	if err := remove(r.path + copyEnding); err != nil { // made by another program in the meantime
		return err
	}
	if err := r.forgetKilled(f); err != nil {
		return err
	}
	if err := r.forgetAsides(f); err != nil {
		return err
	}
	return r.forgetExports(f)
}

// workFolder is what the names of folders begin with, among the system's temporary ones, in
// which a damaged record is read that nothing may be written beside.
const workFolder = "scratchpass-record-"

// leftover is what the names of files begin with that a program was about to write.
const leftover = ".scratchpass-"

// forgetKilled deletes what programs that were killed have left beside the record, while no
// other has it open and none is at work there, and among the system's temporary folders.
func (r *Record) forgetKilled(f *Forgotten) error {
	left, err := beside(r.path, leftover)
	if err != nil {
		return err
	}
	work, err := beside(filepath.Join(os.TempDir(), workFolder), workFolder)
	if err != nil {
		return err
	}
	for _, path := range append(left, work...) {
		if err := os.RemoveAll(path); err != nil {
			return err
		}
		f.Deleted = append(f.Deleted, path)
	}
	return nil
}

// forgetAsides deletes damaged records that were set aside, unless others are in them too or
// nobody can tell.
func (r *Record) forgetAsides(f *Forgotten) error {
	asides, err := beside(r.path, filepath.Base(r.path)+asideEnding)
	if err != nil {
		return err
	}
	for _, path := range asides {
		if slices.ContainsFunc(belongings[1:], func(ending string) bool { return strings.HasSuffix(path, ending) }) {
			continue // it belongs to another
		}
		mine, others, err := whose(path, r.Learner)
		switch {
		case err != nil:
			return err
		case !mine && others:
			continue
		case !mine || others:
			f.Left = append(f.Left, path)
			continue
		}
		for _, ending := range belongings {
			if err := remove(path + ending); err != nil {
				return err
			}
		}
		f.Deleted = append(f.Deleted, path)
	}
	return nil
}

// whose reports whether a damaged file has a learner in it, and whether it has others.
// Neither where it can't be read.
func whose(path, learner string) (mine, others bool, err error) {
	work, err := os.MkdirTemp("", workFolder+"*")
	if err != nil {
		return false, false, err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(work)) }()
	found, err := salvage(path, work)
	if err != nil {
		return false, false, err
	}
	for _, name := range found.learners() {
		mine = mine || name == learner
		others = others || name != learner
	}
	return mine, others, nil
}

// beside are the files in the folder of a file whose names begin in a way.
func beside(path, begin string) (found []string, err error) {
	entries, err := os.ReadDir(filepath.Dir(path))
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), begin) {
			found = append(found, filepath.Join(filepath.Dir(path), e.Name()))
		}
	}
	return found, err
}

// remove deletes a file, if it is there.
func remove(path string) error {
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}
