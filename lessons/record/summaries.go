package record

import (
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"github.com/open-spaced-repetition/go-fsrs/v3"

	"scratchpass/lessons/mastery"
)

// Summary is what the answers to one task come to: mastery, when it is due again,
// and what keeps going wrong.
type Summary struct {
	mastery.State
	Card      fsrs.Card      `json:"card"`            // when it is due again
	Last      time.Time      `json:"last"`            // when it was answered last
	Slips     map[string]int `json:"slips,omitempty"` // how often each common error was made
	Seconds   float64        `json:"seconds"`         // time on the task
	LastShown time.Time      `json:"last_shown"`      // when a whole run was last shown
	SureWrong time.Time      `json:"sure_wrong"`      // when an answer that someone would have bet the part on was last wrong
}

// Fold puts one more answer into a summary; item is its number among all answers of the
// learner, from 1. It is pure: the same answers come to the same summary.
type Fold func(s Summary, a Answer, item int) Summary

// everything is the name under which the count of all a learner's answers stands
// among the summaries of the tasks.
const everything = ""

// Summaries returns what the answers to every task come to, by task, and how many
// answers there are in all.
func (r *Record) Summaries() (of map[string]Summary, answers int, err error) {
	rows, err := r.db.Query("SELECT task, state FROM states WHERE learner = ?", r.Learner)
	if err != nil {
		return nil, 0, err
	}
	defer rows.Close()
	of = map[string]Summary{}
	for rows.Next() {
		var task, text string
		if err := rows.Scan(&task, &text); err != nil {
			return nil, 0, err
		}
		if of[task], err = readSummary(task, text); err != nil {
			return nil, 0, err
		}
	}
	answers = of[everything].Answers
	delete(of, everything)
	return of, answers, rows.Err()
}

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

func summaryOf(tx *sql.Tx, learner, task string) (Summary, error) {
	var text string
	err := tx.QueryRow("SELECT state FROM states WHERE learner = ? AND task = ?", learner, task).Scan(&text)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return Summary{}, nil
	case err != nil:
		return Summary{}, err
	}
	return readSummary(task, text)
}

func readSummary(task, text string) (s Summary, err error) {
	if err := json.Unmarshal([]byte(text), &s); err != nil {
		return s, fmt.Errorf("the summary of %q can't be read: %w", task, err)
	}
	return s, nil
}

func putSummary(tx *sql.Tx, learner, task string, s Summary) error {
	text, err := json.Marshal(s)
	if err != nil {
		return err
	}
	_, err = tx.Exec("INSERT INTO states (learner, task, state) VALUES (?, ?, ?) ON CONFLICT (learner, task) DO UPDATE SET state = excluded.state", learner, task, string(text))
	return err
}

// Refold makes the summaries anew from the answers, in the order they were given, all of
// them or none. Days are those of the place where the computer is now.
func (r *Record) Refold(fold Fold) error {
	return r.change(func(tx *sql.Tx) error { return refold(tx, r.Learner, fold) })
}

// refold reads and writes in one transaction, so that no answer that another program
// keeps meanwhile is left out of the summaries.
func refold(tx *sql.Tx, learner string, fold Fold) error {
	all := map[string]Summary{}
	item := 0
	for a, err := range answersOf(tx, "WHERE learner = ? ORDER BY at_ms, id", learner) {
		if err != nil {
			return err
		}
		item++
		all[a.Task] = fold(all[a.Task], a, item)
	}
	all[everything] = Summary{State: mastery.State{Answers: item}}
	if _, err := tx.Exec("DELETE FROM states WHERE learner = ?", learner); err != nil {
		return err
	}
	for task, s := range all {
		if err := putSummary(tx, learner, task, s); err != nil {
			return err
		}
	}
	return nil
}

// NeedsRefold reports whether there are answers that no summary counts: a record
// from before there were summaries.
func (r *Record) NeedsRefold() (bool, error) {
	var needs bool
	err := r.db.QueryRow("SELECT EXISTS (SELECT 1 FROM answers WHERE learner = ?1) AND NOT EXISTS (SELECT 1 FROM states WHERE learner = ?1)", r.Learner).Scan(&needs)
	return needs, err
}
