package record

import (
	"database/sql"
	"fmt"
)

// Forget deletes everything about the learner, makes sure that the file no longer holds
// it, and returns how many answers there were. Where the file can't be cleaned, because
// another program is reading it for instance, the error says so; to forget again is no
// harm. Files that were set aside, and exports, are not touched.
func (r *Record) Forget() (answers int64, err error) {
	err = r.change(func(tx *sql.Tx) error {
		result, err := tx.Exec("DELETE FROM answers WHERE learner = ?", r.Learner)
		if err != nil {
			return err
		}
		for _, table := range []string{"states", "places", "tests", "sittings"} {
			if _, err := tx.Exec("DELETE FROM "+table+" WHERE learner = ?", r.Learner); err != nil {
				return err
			}
		}
		answers, err = result.RowsAffected()
		return err
	})
	if err != nil {
		return 0, err
	}
	if err := r.clean(); err != nil {
		return answers, fmt.Errorf("the answers are deleted, but the file may still hold what they were: %w; forget once more when no other program has it open", err)
	}
	return answers, nil
}

// clean takes what was deleted out of the log, and out of the pages of the file.
func (r *Record) clean() error {
	if err := r.emptyLog(); err != nil {
		return err
	}
	if _, err := r.db.Exec("VACUUM"); err != nil {
		return err
	}
	return r.emptyLog()
}

// emptyLog writes the log into the file and cuts it to nothing. The database tells in a
// row, not in an error, when someone else still reads from it.
func (r *Record) emptyLog() error {
	var held bool
	var frames, written int
	if err := r.db.QueryRow("PRAGMA wal_checkpoint(TRUNCATE)").Scan(&held, &frames, &written); err != nil {
		return err
	}
	if held {
		return fmt.Errorf("another program is reading it")
	}
	return nil
}
