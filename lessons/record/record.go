// Package record keeps every marked answer of a learner in a local database, so
// that practice adds up. Several programs may write at once; an answer that has been
// acknowledged survives a kill at any moment.
package record

import (
	"database/sql"
	"errors"
	"fmt"
	"time"

	"scratchpass/quiz/answer"
)

// Record is an open record of one learner. It is for one goroutine at a time.
type Record struct {
	Learner  string
	ReadOnly bool    // the file may only be read: nothing can be kept
	Mended   *Mended // what became of a file that was found damaged when this one was opened; nil where none was

	path string
	db   *sql.DB
	free func() error // gives back the lock that says: someone has it open
	made *made        // summaries that can't be kept, or nil
}

// Close closes the record.
func (r *Record) Close() error {
	err := r.db.Close()
	if e := r.free(); err == nil {
		err = e
	}
	return err
}

// Answer is one marked answer as it is kept. The JSON is the format of the export, with
// the names that exports have had from the first.
type Answer struct {
	Learner   string           `json:"learner"`             // whose it is
	At        time.Time        `json:"at"`                  // when it was given; kept to the millisecond
	Task      string           `json:"task"`                // name of the task
	Code      string           `json:"code"`                // of the problem, which can be made again from it
	Given     string           `json:"given"`               // what was typed
	Verdict   answer.Verdict   `json:"verdict"`             // what it was found to be
	Slip      string           `json:"slip,omitempty"`      // the common error or the convention it fits
	Cause     string           `json:"cause,omitempty"`     // which of two causes the error had, where that was asked
	Points    float64          `json:"points"`              // 0 to 1
	Certainty answer.Certainty `json:"certainty,omitempty"` // how sure the learner was
	Hint      bool             `json:"hint,omitempty"`      // a hint or a worked example was shown first
	Seconds   float64          `json:"seconds"`             // from question to answer
	Situation string           `json:"form,omitempty"`      // of a decision, or how the thread was told
	Key       string           `json:"key"`                 // what was right, as it is printed; empty in the oldest records
	Content   string           `json:"content"`             // version of the words
}

// Right reports whether the answer counts as right.
func (a Answer) Right() bool { return a.Verdict.Correct() }

// Append keeps an answer and folds it into the task's summary, both or neither; without
// a fold it is kept alone. The answer becomes that of the record's learner. When Append
// returns without an error, the answer survives whatever happens next. One that is there
// already is kept once: who was stopped before they heard that it was kept keeps it again.
func (r *Record) Append(a Answer, fold Fold) error {
	a.Learner = r.Learner
	err := r.change(func(tx *sql.Tx) error {
		var known bool
		if err := tx.QueryRow(sameAnswer, a.Learner, a.At.UnixMilli(), a.Task, a.Code, a.Given).Scan(&known); known || err != nil {
			return err
		}
		last, latest, err := newest(tx, a.Learner)
		if err != nil {
			return err
		}
		if err := insert(tx, a, last+1); err != nil || fold == nil {
			return err
		}
		if a.At.UnixMilli() < latest { // the clock was set back: answers count in the order they were given
			return refold(tx, a.Learner, fold)
		}
		return addTo(tx, a, fold)
	})
	if err != nil {
		return fmt.Errorf("the answer could not be kept: %w", err)
	}
	return nil
}

// sameAnswer asks whether an answer is there already.
const sameAnswer = "SELECT EXISTS (SELECT 1 FROM answers WHERE learner = ? AND at_ms = ? AND task = ? AND code = ? AND given = ?)"

// change does something to the file, all of it or nothing. Other programs that want to
// write wait until it is done.
func (r *Record) change(do func(tx *sql.Tx) error) error {
	return r.plainly(func() error {
		tx, err := r.db.Begin()
		if err != nil {
			return err
		}
		defer tx.Rollback()
		if err := do(tx); err != nil {
			return err
		}
		return tx.Commit()
	})
}

// ErrBusy says that another program holds the record: what was to be written is not, and
// may be tried again.
var ErrBusy = errors.New("another program is using the record")

// ErrReadOnly says that the record may only be read.
var ErrReadOnly = errors.New("the record may only be read, so nothing in it can be changed: give --record FILE with a copy of it")

// plainly does something with the file, and gives what the database calls busy or read-only
// the names of this package.
func (r *Record) plainly(do func() error) error {
	if r.ReadOnly {
		return ErrReadOnly
	}
	err := do()
	switch {
	case err == nil:
		return nil
	case busy(err):
		return fmt.Errorf("%w (%w)", ErrBusy, err)
	}
	return err
}

// exec is change for one statement.
func (r *Record) exec(statement string, args ...any) error {
	return r.plainly(func() error { _, err := r.db.Exec(statement, args...); return err })
}
