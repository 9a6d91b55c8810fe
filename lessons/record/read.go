package record

import (
	"bufio"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"iter"
	"time"
)

// Summaries returns what the answers to every task come to, by task, and how many
// answers there are in all.
func (r *Record) Summaries() (map[string]Summary, int, error) {
	rows, err := r.db.Query("SELECT task, state FROM states WHERE learner = ?", r.Learner)
	if err != nil {
		return nil, 0, err
	}
	defer rows.Close()
	all, count := map[string]Summary{}, 0
	for rows.Next() {
		var task, text string
		if err := rows.Scan(&task, &text); err != nil {
			return nil, 0, err
		}
		var s Summary
		if err := json.Unmarshal([]byte(text), &s); err != nil {
			return nil, 0, fmt.Errorf("the summary of %s: %w", task, err)
		}
		if task == everything {
			count = s.Answers
			continue
		}
		all[task] = s
	}
	return all, count, rows.Err()
}

const columns = "learner, at_ms, task, code, given, verdict, slip, cause, points, certainty, hint, seconds, form, answer_key, content"

// Answers goes through the learner's answers, oldest first; with a limit above 0
// only through the newest so many.
func (r *Record) Answers(limit int) iter.Seq2[Answer, error] {
	query := "SELECT " + columns + " FROM answers WHERE learner = ? ORDER BY id"
	if limit > 0 {
		query = "SELECT " + columns + " FROM (SELECT * FROM answers WHERE learner = ? ORDER BY id DESC LIMIT " + fmt.Sprint(limit) + ") ORDER BY id"
	}
	return r.rows(query, r.Learner)
}

func (r *Record) rows(query string, args ...any) iter.Seq2[Answer, error] {
	return func(yield func(Answer, error) bool) {
		rows, err := r.db.Query(query, args...)
		if err != nil {
			yield(Answer{}, err)
			return
		}
		defer rows.Close()
		for rows.Next() {
			var a Answer
			var at int64
			var hint int
			err := rows.Scan(&a.Learner, &at, &a.Task, &a.Code, &a.Given, &a.Verdict, &a.Slip, &a.Cause, &a.Points, &a.Certainty, &hint, &a.Seconds, &a.Situation, &a.Key, &a.Content)
			a.At, a.Hint = time.UnixMilli(at), hint != 0
			if !yield(a, err) || err != nil {
				return
			}
		}
		if err := rows.Err(); err != nil {
			yield(Answer{}, err)
		}
	}
}

// Learners lists the names that have answers here.
func (r *Record) Learners() ([]string, error) {
	rows, err := r.db.Query("SELECT DISTINCT learner FROM answers ORDER BY learner")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var names []string
	for rows.Next() {
		var name string
		if err := rows.Scan(&name); err != nil {
			return nil, err
		}
		names = append(names, name)
	}
	return names, rows.Err()
}

// Place returns the part of a lesson at which the learner left off, from 0; ok is
// false when there is none.
func (r *Record) Place(lesson string) (part int, ok bool, err error) {
	err = r.db.QueryRow("SELECT part FROM places WHERE learner = ? AND lesson = ?", r.Learner, lesson).Scan(&part)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, false, nil
	}
	return part, err == nil, err
}

// SetPlace remembers the part of a lesson; a part below 0 forgets it.
func (r *Record) SetPlace(lesson string, part int) error {
	if part < 0 {
		_, err := r.db.Exec("DELETE FROM places WHERE learner = ? AND lesson = ?", r.Learner, lesson)
		return err
	}
	_, err := r.db.Exec("INSERT INTO places (learner, lesson, part, at_ms) VALUES (?, ?, ?, ?) ON CONFLICT (learner, lesson) DO UPDATE SET part = excluded.part, at_ms = excluded.at_ms",
		r.Learner, lesson, part, time.Now().UnixMilli())
	return err
}

// Test is the result of a mixed test.
type Test struct {
	At      time.Time
	Got, Of int
}

// AddTest keeps the result of a mixed test, once.
func (r *Record) AddTest(t Test) error {
	_, err := r.db.Exec("INSERT INTO tests (learner, at_ms, got, of) SELECT ?, ?, ?, ? WHERE NOT EXISTS (SELECT 1 FROM tests WHERE learner = ? AND at_ms = ?)",
		r.Learner, t.At.UnixMilli(), t.Got, t.Of, r.Learner, t.At.UnixMilli())
	return err
}

// LastTest returns the newest mixed test; ok is false when there is none.
func (r *Record) LastTest() (t Test, ok bool, err error) {
	var at int64
	err = r.db.QueryRow("SELECT at_ms, got, of FROM tests WHERE learner = ? ORDER BY at_ms DESC LIMIT 1", r.Learner).Scan(&at, &t.Got, &t.Of)
	if errors.Is(err, sql.ErrNoRows) {
		return t, false, nil
	}
	t.At = time.UnixMilli(at)
	return t, err == nil, err
}

// Day is what was answered on one day.
type Day struct {
	Date           string // 2026-11-25, where the learner is
	Answers, Right int
	Seconds        float64
}

// Days returns the days with answers since a time, oldest first.
func (r *Record) Days(since time.Time) ([]Day, error) {
	var days []Day
	for a, err := range r.rows("SELECT "+columns+" FROM answers WHERE learner = ? AND at_ms >= ? ORDER BY at_ms", r.Learner, since.UnixMilli()) {
		if err != nil {
			return nil, err
		}
		date := a.At.Local().Format(time.DateOnly)
		if len(days) == 0 || days[len(days)-1].Date != date {
			days = append(days, Day{Date: date})
		}
		d := &days[len(days)-1]
		d.Answers++
		d.Seconds += a.Seconds
		if a.Right() {
			d.Right++
		}
	}
	return days, nil
}

// Export writes the learner's answers as JSON lines, oldest first.
func (r *Record) Export(w io.Writer) (n int, err error) {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	for a, err := range r.Answers(0) {
		if err != nil {
			return n, err
		}
		if err := e.Encode(a); err != nil {
			return n, err
		}
		n++
	}
	return n, nil
}

// longestLine is the longest line of an export that is read.
const longestLine = 64 << 10

// Import reads answers from JSON lines into the learner's record, all or none, and
// folds them in. Answers that are there already are left out, so that the same
// export may be read twice.
func (r *Record) Import(in io.Reader, fold Fold) (added, known int, err error) {
	tx, err := r.db.Begin()
	if err != nil {
		return 0, 0, err
	}
	defer tx.Rollback()
	scanner := bufio.NewScanner(in)
	scanner.Buffer(nil, longestLine)
	for line := 1; scanner.Scan(); line++ {
		if len(scanner.Bytes()) == 0 {
			continue
		}
		var a Answer
		if err := json.Unmarshal(scanner.Bytes(), &a); err != nil {
			return 0, 0, fmt.Errorf("line %d is no answer: %w; nothing was read in", line, err)
		}
		if a.Task == "" || a.Verdict == "" || a.At.IsZero() {
			return 0, 0, fmt.Errorf("line %d is no answer: task, verdict and at are wanted; nothing was read in", line)
		}
		a.Learner = r.Learner
		var same int
		err := tx.QueryRow("SELECT COUNT(*) FROM answers WHERE learner = ? AND at_ms = ? AND code = ? AND given = ?", a.Learner, a.At.UnixMilli(), a.Code, a.Given).Scan(&same)
		if err != nil {
			return 0, 0, err
		}
		if same > 0 {
			known++
			continue
		}
		if err := insert(tx, a); err != nil {
			return 0, 0, err
		}
		added++
	}
	if err := scanner.Err(); err != nil {
		return 0, 0, fmt.Errorf("%w; nothing was read in", err)
	}
	if err := tx.Commit(); err != nil {
		return 0, 0, err
	}
	return added, known, r.Refold(fold)
}

// Refold makes the summaries anew from the answers, in the order they were given.
func (r *Record) Refold(fold Fold) error {
	all := map[string]Summary{}
	item := 0
	for a, err := range r.rows("SELECT "+columns+" FROM answers WHERE learner = ? ORDER BY at_ms, id", r.Learner) {
		if err != nil {
			return err
		}
		item++
		all[a.Task] = fold(all[a.Task], a, item)
	}
	var count Summary
	count.Answers = item
	all[everything] = count
	tx, err := r.db.Begin()
	if err != nil {
		return err
	}
	defer tx.Rollback()
	if _, err := tx.Exec("DELETE FROM states WHERE learner = ?", r.Learner); err != nil {
		return err
	}
	for task, s := range all {
		if err := putSummary(tx, r.Learner, task, s); err != nil {
			return err
		}
	}
	return tx.Commit()
}

// NeedsRefold reports whether there are answers that no summary counts: a record
// from before there were summaries.
func (r *Record) NeedsRefold() (bool, error) {
	var answers, states int
	err := r.db.QueryRow("SELECT EXISTS (SELECT 1 FROM answers WHERE learner = ?), EXISTS (SELECT 1 FROM states WHERE learner = ?)", r.Learner, r.Learner).Scan(&answers, &states)
	return answers > 0 && states == 0, err
}

// Forget deletes everything about the learner, and makes sure that the file no longer
// holds it.
func (r *Record) Forget() (answers int64, err error) {
	tx, err := r.db.Begin()
	if err != nil {
		return 0, err
	}
	defer tx.Rollback()
	result, err := tx.Exec("DELETE FROM answers WHERE learner = ?", r.Learner)
	if err != nil {
		return 0, err
	}
	for _, table := range []string{"states", "places", "tests", "sittings"} {
		if _, err := tx.Exec("DELETE FROM "+table+" WHERE learner = ?", r.Learner); err != nil {
			return 0, err
		}
	}
	if err := tx.Commit(); err != nil {
		return 0, err
	}
	// The pages themselves: out of the log, and out of the file.
	for _, pragma := range []string{"PRAGMA wal_checkpoint(TRUNCATE)", "VACUUM", "PRAGMA wal_checkpoint(TRUNCATE)"} {
		if _, err := r.db.Exec(pragma); err != nil {
			return 0, err
		}
	}
	return result.RowsAffected()
}
