package record

import (
	"cmp"
	"database/sql"
	"iter"
	"maps"
	"slices"
	"strconv"
	"time"
)

// columns are those of an answer, in the order in which they are written and read.
const columns = "learner, n, at_ms, zone_s, task, code, given, verdict, slip, cause, points, certainty, hint, seconds, form, answer_key, content, sum"

// insert keeps an answer as the learner's n-th.
func insert(tx *sql.Tx, a Answer, n int64) error {
	w := row{Answer: a, n: n}
	_, err := tx.Exec("INSERT INTO answers ("+columns+") VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17, $18)",
		a.Learner, n, a.At.UnixMilli(), zoneOf(a.At), a.Task, a.Code, a.Given, string(a.Verdict), a.Slip, a.Cause, a.Points, string(a.Certainty), flag(a.Hint), a.Seconds, a.Situation, a.Key, a.Content, w.seal())
	return err
}

// flag is how a yes or no is kept: a database knows its own kind of it, or none.
func flag(yes bool) int64 {
	if yes {
		return 1
	}
	return 0
}

// newest returns the number of the learner's newest answer, 0 where there is none, and the
// latest moment of any.
func newest(tx *sql.Tx, learner string) (n, atMS int64, err error) {
	err = tx.QueryRow("SELECT COALESCE((SELECT MAX(n) FROM answers WHERE learner = $1), 0), COALESCE((SELECT MAX(at_ms) FROM answers WHERE learner = $1), 0)", learner).Scan(&n, &atMS)
	if err != nil {
		return 0, 0, err
	}
	var lost sql.NullInt64 // a number is given once, even if its answer was lost
	err = tx.QueryRow("SELECT MAX(n) FROM lost WHERE learner = $1", learner).Scan(&lost)
	return max(n, lost.Int64), atMS, err
}

// queryer is what answers are read from: the record, or a change that is under way.
type queryer interface {
	Query(query string, args ...any) (*sql.Rows, error)
}

// batchRows is how many answers are read at a time: no other program waits for long, however
// slowly they are gone through.
const batchRows = 500

// batch reads the next answers of those that a condition and an order tell.
func batch(q queryer, which string, args ...any) ([]row, error) {
	rows, err := q.Query("SELECT id, "+columns+" FROM answers WHERE "+which+" LIMIT "+strconv.Itoa(batchRows), args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var all []row
	for rows.Next() {
		w, err := scan(rows)
		if err != nil {
			return nil, err
		}
		all = append(all, w)
	}
	return all, rows.Err()
}

// scan reads the row at hand.
func scan(rows *sql.Rows) (w row, err error) {
	var at, zone int64
	err = rows.Scan(&w.id, &w.Learner, &w.n, &at, &zone, &w.Task, &w.Code, &w.Given, &w.Verdict, &w.Slip, &w.Cause, &w.Points, &w.Certainty, &w.Hint, &w.Seconds, &w.Situation, &w.Key, &w.Content, &w.sum)
	w.At = moment(at, zone)
	return w, err
}

// whole returns an error for an answer that is not as it was kept.
func (w row) whole() error {
	if w.sum != w.seal() {
		return spoilt{w.Learner, w.n}
	}
	return nil
}

// inBatches goes through rows that are read a batch at a time: next reads those behind the
// last one, which is nil at first. An error is the last that comes.
func inBatches(next func(last *row) ([]row, error)) iter.Seq2[row, error] {
	return func(yield func(row, error) bool) {
		for last := (*row)(nil); ; {
			rows, err := next(last)
			if err != nil {
				yield(row{}, err)
				return
			}
			if len(rows) == 0 {
				return
			}
			for i := range rows {
				if !yield(rows[i], nil) {
					return
				}
			}
			last = &rows[len(rows)-1]
		}
	}
}

// everyRow goes through all answers of a file, whosever and however they are.
func everyRow(q queryer) iter.Seq2[row, error] {
	return inBatches(func(last *row) ([]row, error) {
		id := int64(0)
		if last != nil {
			id = last.id
		}
		return batch(q, "id > $1 ORDER BY id", id)
	})
}

// asKept are answers as they were kept; one that is not is an error, and the last that comes.
func asKept(rows iter.Seq2[row, error]) iter.Seq2[Answer, error] {
	return func(yield func(Answer, error) bool) {
		for w, err := range rows {
			if err == nil {
				err = w.whole()
			}
			if !yield(w.Answer, err) || err != nil {
				return
			}
		}
	}
}

// inOrder goes through a learner's answers in the order they were kept. An error is the last
// that comes.
func inOrder(q queryer, learner string) iter.Seq2[Answer, error] {
	return asKept(inBatches(func(last *row) ([]row, error) {
		n := int64(0)
		if last != nil {
			n = last.n
		}
		return batch(q, "learner = $1 AND n > $2 ORDER BY n", learner, n)
	}))
}

// byTime goes through a learner's answers in the order they were given, from a moment on, in
// milliseconds.
func byTime(q queryer, learner string, sinceMS int64) iter.Seq2[Answer, error] {
	return asKept(inBatches(func(last *row) ([]row, error) {
		ms, n := sinceMS, int64(-1)
		if last != nil {
			ms, n = last.At.UnixMilli(), last.n
		}
		return batch(q, "learner = $1 AND (at_ms > $2 OR at_ms = $2 AND n > $3) ORDER BY at_ms, n", learner, ms, n)
	}))
}

// Answers goes through the learner's answers in the order they were kept, the oldest
// first. An error is the last that comes.
func (r *Record) Answers() iter.Seq2[Answer, error] { return inOrder(r.db, r.Learner) }

// Situations are those of the last answers to a task, so many of them, the latest first.
func (r *Record) Situations(task string, n int) (all []string, err error) {
	rows, err := r.db.Query("SELECT form FROM answers WHERE learner = $1 AND task = $2 ORDER BY at_ms DESC, n DESC LIMIT $3", r.Learner, task, n)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var situation string
		if err := rows.Scan(&situation); err != nil {
			return nil, err
		}
		all = append(all, situation)
	}
	return all, rows.Err()
}

// Day is what was answered on one day.
type Day struct {
	Date           string // 2026-11-25, where it was
	Answers, Right int
	Seconds        float64
}

// Days returns the days with answers since a time, oldest first. They are those of the place
// where each answer was given.
func (r *Record) Days(since time.Time) ([]Day, error) {
	of := map[string]Day{}
	for a, err := range byTime(r.db, r.Learner, since.UnixMilli()) {
		if err != nil {
			return nil, err
		}
		d := of[a.At.Format(time.DateOnly)]
		d.Date = a.At.Format(time.DateOnly)
		d.Answers++
		d.Seconds += a.Seconds
		if a.Right() {
			d.Right++
		}
		of[d.Date] = d
	}
	return slices.SortedFunc(maps.Values(of), func(a, b Day) int { return cmp.Compare(a.Date, b.Date) }), nil
}
