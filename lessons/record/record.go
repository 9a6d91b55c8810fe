// Package record keeps every marked answer of a learner in a local database, so
// that practice adds up. Several programs may write at once; an answer that has been
// acknowledged survives a kill at any moment.
package record

import (
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/open-spaced-repetition/go-fsrs/v3"
	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"scratchpass/lessons/mastery"
	"scratchpass/quiz/answer"
)

// Answer is one marked answer as it is kept. The JSON is the format of the export.
type Answer struct {
	Learner   string           `json:"learner"`
	At        time.Time        `json:"at"`
	Task      string           `json:"task"`
	Code      string           `json:"code"`
	Given     string           `json:"given"`
	Verdict   answer.Verdict   `json:"verdict"`
	Slip      string           `json:"slip,omitempty"`
	Cause     string           `json:"cause,omitempty"`
	Points    float64          `json:"points"`
	Certainty answer.Certainty `json:"certainty,omitempty"`
	Hint      bool             `json:"hint,omitempty"`
	Seconds   float64          `json:"seconds"` // from question to answer
	Situation string           `json:"form,omitempty"`
	Key       string           `json:"key"`
	Content   string           `json:"content"` // version of the words
}

// Right reports whether the answer counts as right.
func (a Answer) Right() bool { return a.Verdict.Correct() }

// Record is an open record of one learner.
type Record struct {
	Learner  string
	SetAside string // where a damaged file was put when this one was opened; empty when none was

	db *sql.DB
}

// schemas are the steps from an empty file to the newest form, in order. A step is
// never changed once it has been released: a record from any of them still opens.
var schemas = []string{
	`CREATE TABLE answers (
		id INTEGER PRIMARY KEY, learner TEXT NOT NULL, at_ms INTEGER NOT NULL, task TEXT NOT NULL, code TEXT NOT NULL,
		given TEXT NOT NULL, verdict TEXT NOT NULL, slip TEXT NOT NULL, points REAL NOT NULL, certainty TEXT NOT NULL,
		hint INTEGER NOT NULL, seconds REAL NOT NULL, content TEXT NOT NULL);
	CREATE INDEX answers_by_learner ON answers (learner, id);`,
	`ALTER TABLE answers ADD COLUMN cause TEXT NOT NULL DEFAULT '';
	ALTER TABLE answers ADD COLUMN form TEXT NOT NULL DEFAULT '';
	ALTER TABLE answers ADD COLUMN answer_key TEXT NOT NULL DEFAULT '';
	CREATE INDEX answers_by_time ON answers (learner, at_ms);
	CREATE TABLE states (learner TEXT NOT NULL, task TEXT NOT NULL, state TEXT NOT NULL, PRIMARY KEY (learner, task));
	CREATE TABLE tests (learner TEXT NOT NULL, at_ms INTEGER NOT NULL, got INTEGER NOT NULL, of INTEGER NOT NULL);
	CREATE TABLE places (learner TEXT NOT NULL, lesson TEXT NOT NULL, part INTEGER NOT NULL, at_ms INTEGER NOT NULL, PRIMARY KEY (learner, lesson));`,
	`CREATE TABLE sittings (learner TEXT NOT NULL, sitting INTEGER NOT NULL, n INTEGER NOT NULL, line TEXT NOT NULL, PRIMARY KEY (learner, sitting, n));`,
}

// Open opens the record in a file, or begins one. A file that is damaged is set
// aside under another name and never written to.
func Open(path, learner string) (*Record, error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, err
	}
	r, err := open(path, learner)
	if err == nil || !damaged(err) {
		return r, err
	}
	aside := path + ".damaged-" + time.Now().Format("20060102-150405.000")
	for _, ending := range []string{"", "-wal", "-shm"} {
		if err := os.Rename(path+ending, aside+ending); err != nil && !errors.Is(err, os.ErrNotExist) {
			return nil, fmt.Errorf("the record %s is damaged and can't be set aside: %w", path, err)
		}
	}
	r, err = open(path, learner)
	if err == nil {
		r.SetAside = aside
	}
	return r, err
}

// damaged reports whether an error says that the file is no sound database.
func damaged(err error) bool {
	var e *sqlite.Error
	if !errors.As(err, &e) {
		return false
	}
	switch e.Code() & 0xff {
	case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
		return true
	}
	return false
}

func open(path, learner string) (*Record, error) {
	// Private from the first moment: the file exists before the database opens it.
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	if err := f.Close(); err != nil {
		return nil, err
	}
	// busy_timeout stands first: the other settings already need the lock.
	dsn := "file:" + escape(path) + "?_pragma=busy_timeout(20000)&_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)" +
		"&_pragma=secure_delete(ON)&_pragma=foreign_keys(ON)&_txlock=immediate"
	db, err := sql.Open("sqlite", dsn)
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(1)
	r := &Record{Learner: learner, db: db}
	if err := r.migrate(); err != nil {
		db.Close()
		return nil, err
	}
	return r, nil
}

// escape makes a path fit for a URI.
func escape(path string) string {
	return strings.NewReplacer("%", "%25", "?", "%3f", "#", "%23").Replace(filepath.ToSlash(path))
}

// migrate brings an older file to the newest form, one step a transaction. Two programs
// that begin one record at the same moment both want to set how its journal is kept;
// the database does not wait for that by itself, so it is tried again.
func (r *Record) migrate() error {
	const longest = 4 * time.Second
	for wait := time.Millisecond; ; {
		done, err := r.migrateOne()
		switch {
		case busy(err) && wait < longest:
			time.Sleep(wait)
			wait *= 2
		case done || err != nil:
			return err
		}
	}
}

// busy reports whether an error says that another program holds the file.
func busy(err error) bool {
	var e *sqlite.Error
	return errors.As(err, &e) && e.Code()&0xff == sqlite3.SQLITE_BUSY
}

func (r *Record) migrateOne() (done bool, err error) {
	var version int
	if err := r.db.QueryRow("PRAGMA user_version").Scan(&version); err != nil {
		return false, err
	}
	if version > len(schemas) {
		return false, fmt.Errorf("the record was written by a newer program (form %d, this one knows %d): use that one", version, len(schemas))
	}
	if version == len(schemas) {
		return true, nil
	}
	tx, err := r.db.Begin() // immediate: another process that starts at the same moment waits
	if err != nil {
		return false, err
	}
	defer tx.Rollback()
	var now int
	if err := tx.QueryRow("PRAGMA user_version").Scan(&now); err != nil || now != version {
		return false, err // the other one has done it
	}
	if _, err := tx.Exec(schemas[version]); err != nil {
		return false, err
	}
	if _, err := tx.Exec(fmt.Sprintf("PRAGMA user_version = %d", version+1)); err != nil {
		return false, err
	}
	return false, tx.Commit()
}

// Close closes the record.
func (r *Record) Close() error { return r.db.Close() }

// Summary is what the answers to one task come to: mastery, when it is due again,
// and what keeps going wrong.
type Summary struct {
	mastery.State
	Card      fsrs.Card      `json:"card"` // when it is due again
	Last      time.Time      `json:"last"`
	Slips     map[string]int `json:"slips,omitempty"`
	Seconds   float64        `json:"seconds"`
	LastShown time.Time      `json:"last_shown"` // when a whole run was last shown
	SureWrong time.Time      `json:"sure_wrong"` // when an answer that someone would have bet the part on was last wrong
}

// Fold puts one more answer into a summary; item is its number among all answers.
type Fold func(s Summary, a Answer, item int) Summary

// Append keeps an answer and folds it into the task's summary, both or neither. One that is
// there already is kept once: who was stopped before they heard that it was kept does it again. When
// it returns without an error, the answer survives whatever happens next.
func (r *Record) Append(a Answer, fold Fold) error {
	a.Learner = r.Learner
	tx, err := r.db.Begin()
	if err != nil {
		return notKept(err)
	}
	defer tx.Rollback()
	var known bool
	if err := tx.QueryRow(sameAnswer, a.Learner, a.At.UnixMilli(), a.Task, a.Code, a.Given).Scan(&known); known || err != nil {
		return notKept(err)
	}
	if err := insert(tx, a); err != nil {
		return notKept(err)
	}
	if fold != nil {
		if err := addTo(tx, a, fold); err != nil {
			return notKept(err)
		}
	}
	if err := tx.Commit(); err != nil {
		return notKept(err)
	}
	return nil
}

// everything is the name under which the count of all a learner's answers stands
// among the summaries of the tasks.
const everything = ""

// addTo folds an answer into the count of all and into the summary of its task.
func addTo(tx *sql.Tx, a Answer, fold Fold) error {
	count, err := summaryOf(tx, a.Learner, everything)
	if err != nil {
		return err
	}
	count.Answers++
	if err := putSummary(tx, a.Learner, everything, count); err != nil {
		return err
	}
	s, err := summaryOf(tx, a.Learner, a.Task)
	if err != nil {
		return err
	}
	return putSummary(tx, a.Learner, a.Task, fold(s, a, count.Answers))
}

// sameAnswer asks whether an answer is there already.
const sameAnswer = "SELECT EXISTS (SELECT 1 FROM answers WHERE learner = ? AND at_ms = ? AND task = ? AND code = ? AND given = ?)"

// notKept says of an error that an answer could not be kept; of none nothing.
func notKept(err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("the answer could not be kept: %w", err)
}

type execer interface {
	Exec(query string, args ...any) (sql.Result, error)
}

func insert(tx execer, a Answer) error {
	hint := 0
	if a.Hint {
		hint = 1
	}
	_, err := tx.Exec(`INSERT INTO answers (learner, at_ms, task, code, given, verdict, slip, cause, points, certainty, hint, seconds, form, answer_key, content)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		a.Learner, a.At.UnixMilli(), a.Task, a.Code, a.Given, a.Verdict, a.Slip, a.Cause, a.Points, a.Certainty, hint, a.Seconds, a.Situation, a.Key, a.Content)
	return err
}

func summaryOf(tx *sql.Tx, learner, task string) (Summary, error) {
	var s Summary
	var text string
	err := tx.QueryRow("SELECT state FROM states WHERE learner = ? AND task = ?", learner, task).Scan(&text)
	if errors.Is(err, sql.ErrNoRows) {
		return s, nil
	}
	if err == nil {
		err = json.Unmarshal([]byte(text), &s)
	}
	return s, err
}

func putSummary(tx execer, learner, task string, s Summary) error {
	text, err := json.Marshal(s)
	if err != nil {
		return err
	}
	_, err = tx.Exec("INSERT INTO states (learner, task, state) VALUES (?, ?, ?) ON CONFLICT (learner, task) DO UPDATE SET state = excluded.state", learner, task, string(text))
	return err
}
