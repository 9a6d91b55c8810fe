package record

import (
	"errors"
	"os"
	"path/filepath"
	"time"

	"modernc.org/sqlite"

	"scratchpass/lessons/postgres"
	"scratchpass/quiz/files"
)

// OpenTrial opens a copy of a learner's record, in memory: to try things on that are to leave
// no trace. The record itself is mended first if it is damaged, as Open does; where there is
// none the copy is empty.
func OpenTrial(path, learner string) (*Record, error) {
	trial, err := connect("", learner, "&mode=memory&_txlock=immediate")
	if err != nil {
		return nil, err
	}
	if postgres.Is(path) {
		err = trial.copyOf(path)
	} else if _, missing := os.Stat(path); missing == nil {
		var r *Record
		if r, err = Open(path, learner); err == nil {
			trial.Mended = r.Mended
			err = errors.Join(trial.restore(path), r.Close())
		}
	}
	if err == nil {
		err = retry(trial.migrate, time.Sleep)
	}
	if err != nil {
		return nil, errors.Join(err, trial.db.Close())
	}
	return trial, nil
}

// copyOf fills this record with what the learner has on a server.
func (r *Record) copyOf(address string) error {
	if err := retry(r.migrate, time.Sleep); err != nil {
		return err
	}
	from, err := openShared(address, r.Learner, checkedDaily)
	if err != nil {
		return err
	}
	return errors.Join(from.CopyTo(r), from.Close())
}

// openRolledBack opens what a record was before the change in the midst of which a program was
// killed, in memory: where nothing may be written.
func openRolledBack(path, learner string) (*Record, error) {
	work, err := os.MkdirTemp("", workFolder+"*")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(work)
	at := filepath.Join(work, "record.db")
	for _, ending := range belongings[:2] {
		if err := copyFile(path+ending, at+ending); err != nil {
			return nil, err
		}
	}
	r, err := open(at, "")
	if err != nil {
		return nil, err
	}
	if err := r.db.Close(); err != nil {
		return nil, err
	}
	held, err := connect("", learner, "&mode=memory")
	if err != nil {
		return nil, err
	}
	if err := held.restore(at); err != nil {
		return nil, errors.Join(err, held.db.Close())
	}
	held.path, held.ReadOnly = path, true
	return held, nil
}

// restore fills this record with what another file has.
func (r *Record) restore(path string) error {
	return r.backup(func(c copier) (*sqlite.Backup, error) { return c.NewRestore("file:" + files.URI(path) + "?mode=ro") })
}
