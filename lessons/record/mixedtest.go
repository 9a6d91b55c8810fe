package record

import (
	"database/sql"
	"errors"
	"time"
)

// Test is the result of a mixed test.
type Test struct {
	At      time.Time // when it was finished; kept to the millisecond
	Got, Of int       // right, of so many
}

// AddTest keeps the result of a mixed test.
func (r *Record) AddTest(t Test) error {
	at := t.At.UnixMilli()
	return r.exec("INSERT INTO tests (learner, at_ms, got, of, sum) SELECT $1, CAST($2 AS BIGINT), CAST($3 AS BIGINT), CAST($4 AS BIGINT), CAST($5 AS BIGINT) WHERE NOT EXISTS (SELECT 1 FROM tests WHERE learner = $1 AND at_ms = $2 AND got = $3 AND of = $4)",
		r.Learner, at, t.Got, t.Of, sealOf(r.Learner, at, t.Got, t.Of))
}

// wholeRow reports whether a row is as it was kept: its last column is the sum over the others.
func wholeRow(row []any) bool {
	last := len(row) - 1
	return row[last] == sealOf(row[:last]...)
}

// LastTest returns the newest mixed test; ok is false when there is none.
func (r *Record) LastTest() (t Test, ok bool, err error) {
	var at int64
	err = r.db.QueryRow("SELECT at_ms, got, of FROM tests WHERE learner = $1 ORDER BY at_ms DESC, rowid DESC LIMIT 1", r.Learner).Scan(&at, &t.Got, &t.Of)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return Test{}, false, nil
	case err != nil:
		return Test{}, false, err
	}
	t.At = time.UnixMilli(at)
	return t, true, nil
}
