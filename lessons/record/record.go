// Package record keeps every marked answer of a learner in a database, so that practice adds
// up: in a file, which is mended where it was damaged, or on a server of PostgreSQL that many
// share. Several programs may write at once; an answer that has been acknowledged survives a
// kill at any moment.
package record

import (
	"database/sql"
	"errors"
	"fmt"
	"time"

	"scratchpass/lessons/postgres"
	"scratchpass/quiz/answer"
)

// Record is an open record of one learner. It is for one goroutine at a time.
type Record struct {
	Learner  string
	ReadOnly bool    // the file may only be read: nothing can be kept
	Mended   *Mended // what became of a file that was found damaged when this one was opened; nil where none was

	path   string // of the file; empty on a server
	shared bool   // it is on a server, with those of others
	db     *sql.DB
	free   func() error // gives back the lock that says: someone has it open
	made   *made        // summaries that can't be kept, or nil
}

// Close closes the record. The database of a server stays open for others.
func (r *Record) Close() error {
	if r.shared {
		return r.free()
	}
	return errors.Join(r.db.Close(), r.free())
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
const sameAnswer = "SELECT EXISTS (SELECT 1 FROM answers WHERE learner = $1 AND at_ms = $2 AND task = $3 AND code = $4 AND given = $5)"

// change does something to the record, all of it or nothing. Other programs that want to
// write wait until it is done.
func (r *Record) change(do func(tx *sql.Tx) error) error { return r.changeAs(mine, do) }

// changeSoon is change for what can be made anew: a server does not wait for its disk, so that its
// crash may take the last of such changes, never one without all after it. A file is waited for.
func (r *Record) changeSoon(do func(tx *sql.Tx) error) error { return r.changeAs(mineSoon, do) }

func (r *Record) changeAs(takes string, do func(tx *sql.Tx) error) error {
	return r.plainly(func() error {
		tx, err := r.db.Begin() // a file is taken as a whole
		if err != nil {
			return err
		}
		defer tx.Rollback()
		if r.shared {
			if _, err := tx.Exec(takes, r.Learner); err != nil {
				return err
			}
		}
		if err := do(tx); err != nil {
			return err
		}
		return tx.Commit()
	})
}

// mine waits, on a server, until no other program changes what is this learner's, and keeps it so
// until the change is done.
const mine = "SELECT pg_advisory_xact_lock(hashtextextended(current_schema() || ' record ' || $1, 0))"

// mineSoon is mine for a change that the disk is not waited for.
const mineSoon = mine + ", set_config('synchronous_commit', 'off', true)"

// ErrBusy says that another program holds the record: what was to be written is not, and
// may be tried again.
var ErrBusy = errors.New("another program is using the record")

// ErrAway says that the server was out of reach: whether it has kept what was to be written is not
// known. It may be tried again; what is there already is kept once.
var ErrAway = errors.New("the database is out of reach")

// Passes reports whether an error says that something stands in the way which may be gone soon.
func Passes(err error) bool { return errors.Is(err, ErrBusy) || errors.Is(err, ErrAway) }

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
	case r.shared && postgres.Held(err):
		return fmt.Errorf("%w (%w)", ErrBusy, err)
	case r.shared && postgres.Gone(err):
		return fmt.Errorf("%w (%w)", ErrAway, err)
	}
	return err
}

// exec is change for one statement.
func (r *Record) exec(statement string, args ...any) error {
	return r.change(func(tx *sql.Tx) error { _, err := tx.Exec(statement, args...); return err })
}
