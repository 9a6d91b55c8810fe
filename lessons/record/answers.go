package record

import (
	"database/sql"
	"iter"
	"time"
)

// columns are those of an answer, in the order in which they are written and read.
const columns = "learner, at_ms, task, code, given, verdict, slip, cause, points, certainty, hint, seconds, form, answer_key, content"

func insert(tx *sql.Tx, a Answer) error {
	_, err := tx.Exec("INSERT INTO answers ("+columns+") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
		a.Learner, a.At.UnixMilli(), a.Task, a.Code, a.Given, a.Verdict, a.Slip, a.Cause, a.Points, a.Certainty, a.Hint, a.Seconds, a.Situation, a.Key, a.Content)
	return err
}

// queryer is what answers are read from: the record, or a change that is under way.
type queryer interface {
	Query(query string, args ...any) (*sql.Rows, error)
}

// answersOf goes through answers. An error is the last that comes.
func answersOf(q queryer, which string, args ...any) iter.Seq2[Answer, error] {
	return func(yield func(Answer, error) bool) {
		rows, err := q.Query("SELECT "+columns+" FROM answers "+which, args...)
		if err != nil {
			yield(Answer{}, err)
			return
		}
		defer rows.Close()
		for rows.Next() {
			var a Answer
			var at int64
			err := rows.Scan(&a.Learner, &at, &a.Task, &a.Code, &a.Given, &a.Verdict, &a.Slip, &a.Cause, &a.Points, &a.Certainty, &a.Hint, &a.Seconds, &a.Situation, &a.Key, &a.Content)
			a.At = time.UnixMilli(at)
			if !yield(a, err) || err != nil {
				return
			}
		}
		if err := rows.Err(); err != nil {
			yield(Answer{}, err)
		}
	}
}

// Answers goes through the learner's answers in the order they were kept, the oldest
// first. An error is the last that comes.
func (r *Record) Answers() iter.Seq2[Answer, error] {
	return answersOf(r.db, "WHERE learner = ? ORDER BY id", r.Learner)
}

// Day is what was answered on one day.
type Day struct {
	Date           string // 2026-11-25, where the learner is
	Answers, Right int
	Seconds        float64
}

// Days returns the days with answers since a time, oldest first. They are the days of
// that time's place: an answer just after midnight there belongs to the new day.
func (r *Record) Days(since time.Time) ([]Day, error) {
	var days []Day
	for a, err := range answersOf(r.db, "WHERE learner = ? AND at_ms >= ? ORDER BY at_ms", r.Learner, since.UnixMilli()) {
		if err != nil {
			return nil, err
		}
		date := a.At.In(since.Location()).Format(time.DateOnly)
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
