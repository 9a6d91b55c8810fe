package record

import (
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math"
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

// made are summaries that could not be kept.
type made struct {
	of      map[string]Summary
	answers int
}

// Fold puts one more answer into a summary; item is its number among all answers of the
// learner, from 1. It is pure: the same answers come to the same summary.
type Fold func(s Summary, a Answer, item int) Summary

// everything is the name under which the count of all a learner's answers stands
// among the summaries of the tasks.
const everything = ""

// count is what stands there: how many answers the summaries count, and by which rule.
type count struct {
	Answers int `json:"answers"`
	Fold    int `json:"fold,omitempty"` // its number
}

// Summaries returns what the answers to every task come to, by task, and how many
// answers there are in all.
func (r *Record) Summaries() (of map[string]Summary, answers int, err error) {
	if r.made != nil {
		return maps.Clone(r.made.of), r.made.answers, nil
	}
	of, all, err := r.states()
	return of, all.Answers, err
}

// states are the summaries that are kept.
func (r *Record) states() (of map[string]Summary, all count, err error) {
	rows, err := r.db.Query("SELECT learner, task, state, sum FROM states WHERE learner = $1", r.Learner)
	if err != nil {
		return nil, count{}, err
	}
	of = map[string]Summary{}
	err = eachState(rows, func(string) (map[string]Summary, *count) { return of, &all })
	return of, all, err
}

// eachState reads summaries, and puts each where to says that its learner's are.
func eachState(rows *sql.Rows, to func(learner string) (map[string]Summary, *count)) error {
	defer rows.Close()
	for rows.Next() {
		var learner, task, text string
		var sum int64
		if err := rows.Scan(&learner, &task, &text, &sum); err != nil {
			return err
		}
		of, all := to(learner)
		var err error
		if task == everything {
			*all, err = readState[count](learner, task, text, sum)
		} else {
			of[task], err = readState[Summary](learner, task, text, sum)
		}
		if err != nil {
			return err
		}
	}
	return rows.Err()
}

// addTo folds an answer into the count of all and into the summary of its task.
func addTo(tx *sql.Tx, a Answer, fold Fold) error {
	all, err := stateOf[count](tx, a.Learner, everything)
	if err != nil {
		return err
	}
	all.Answers++
	if err := putState(tx, a.Learner, everything, all); err != nil {
		return err
	}
	s, err := stateOf[Summary](tx, a.Learner, a.Task)
	if err != nil {
		return err
	}
	return putState(tx, a.Learner, a.Task, fold(s, a, all.Answers))
}

func stateOf[T any](tx *sql.Tx, learner, task string) (state T, err error) {
	var text string
	var sum int64
	err = tx.QueryRow("SELECT state, sum FROM states WHERE learner = $1 AND task = $2", learner, task).Scan(&text, &sum)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return state, nil
	case err != nil:
		return state, err
	}
	return readState[T](learner, task, text, sum)
}

// errSpoiltState says that a summary can't be used: it can be made anew.
var errSpoiltState = errors.New("a summary is spoilt")

// readState reads the text of a summary that has the sum it was kept with.
func readState[T any](learner, task, text string, sum int64) (state T, err error) {
	if sum != sealOf(learner, task, text) {
		return state, fmt.Errorf("%w: the summary of %q is not as it was kept", errSpoiltState, task)
	}
	if err := json.Unmarshal([]byte(text), &state); err != nil {
		return state, fmt.Errorf("%w: the summary of %q can't be read: %w", errSpoiltState, task, err)
	}
	return state, nil
}

func putState(tx *sql.Tx, learner, task string, state any) error {
	text, err := json.Marshal(state)
	if err != nil {
		return err
	}
	_, err = tx.Exec("INSERT INTO states (learner, task, state, sum) VALUES ($1, $2, $3, $4) ON CONFLICT (learner, task) DO UPDATE SET state = excluded.state, sum = excluded.sum",
		learner, task, string(text), sealOf(learner, task, string(text)))
	return err
}

// Refold makes the summaries anew from the answers, in the order they were given, all of
// them or none. rule is the number of the rule that the fold goes by. Of a record that may
// only be read they are kept in memory.
func (r *Record) Refold(fold Fold, rule int) error {
	if r.ReadOnly {
		of, answers, err := folded(r.db, r.Learner, fold)
		r.made = &made{of, answers}
		return err
	}
	return r.change(func(tx *sql.Tx) error {
		if err := putState(tx, r.Learner, everything, count{Fold: rule}); err != nil {
			return err
		}
		return refold(tx, r.Learner, fold)
	})
}

// refold reads and writes in one transaction, so that no answer that another program
// keeps meanwhile is left out of the summaries. The number of the rule stays.
func refold(tx *sql.Tx, learner string, fold Fold) error {
	was, err := stateOf[count](tx, learner, everything)
	if err != nil { // it can't be read: then it is not known which rule the rest went by
		was = count{}
	}
	all, n, err := folded(tx, learner, fold)
	if err != nil {
		return err
	}
	if _, err := tx.Exec("DELETE FROM states WHERE learner = $1", learner); err != nil {
		return err
	}
	for task, s := range all {
		if err := putState(tx, learner, task, s); err != nil {
			return err
		}
	}
	return putState(tx, learner, everything, count{n, was.Fold})
}

// folded is what a learner's answers come to, by task, and how many there are.
func folded(q queryer, learner string, fold Fold) (of map[string]Summary, answers int, err error) {
	of = map[string]Summary{}
	for a, err := range byTime(q, learner, math.MinInt64) {
		if err != nil {
			return nil, 0, err
		}
		answers++
		of[a.Task] = fold(of[a.Task], a, answers)
	}
	return of, answers, nil
}

// NeedsRefold reports whether the summaries are not those of the answers by the rule of this
// number: an older rule made them, a record from before there were summaries has none, or
// they count other answers than there are.
func (r *Record) NeedsRefold(rule int) (bool, error) {
	var answers int
	if err := r.db.QueryRow("SELECT COUNT(*) FROM answers WHERE learner = $1", r.Learner).Scan(&answers); err != nil {
		return false, err
	}
	of, all, err := r.states()
	if errors.Is(err, errSpoiltState) {
		return true, nil
	}
	sum := 0
	for _, s := range of {
		sum += s.Answers
	}
	return all.Fold != rule || all.Answers != answers || sum != answers, err
}
