package record

import (
	"crypto/sha256"
	"encoding/hex"
	"time"
)

// Begun is a rehearsal that was begun and not yet brought to its end. Its moves are in its log.
type Begun struct {
	Job, JobSum string // as of a Rehearsal
	Thread      string
	At          time.Time // when its first move was made; kept to the millisecond
	Hints       int       // that were asked for so far
}

// SumOfJob is a sum over the text of a job that does not ship: two jobs of one name are two
// jobs. A job without a text of its own has none.
func SumOfJob(text string) string {
	if text == "" {
		return ""
	}
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:8])
}

// BeginRehearsal notes that a rehearsal was begun, or how it stands. Of a job one is under way
// at most: another takes its place.
func (r *Record) BeginRehearsal(b Begun) error {
	return r.exec(`INSERT INTO begun (learner, job, job_sum, thread, at_ms, hints) VALUES ($1, $2, $3, $4, $5, $6)
		ON CONFLICT (learner, job, job_sum) DO UPDATE SET thread = excluded.thread, at_ms = excluded.at_ms, hints = excluded.hints`,
		r.Learner, b.Job, b.JobSum, b.Thread, b.At.UnixMilli(), b.Hints)
}

// BegunRehearsals are those that were begun and not brought to their end, the latest first.
func (r *Record) BegunRehearsals() (all []Begun, err error) {
	rows, err := r.db.Query("SELECT job, job_sum, thread, at_ms, hints FROM begun WHERE learner = $1 ORDER BY at_ms DESC, job, job_sum", r.Learner)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var b Begun
		var at int64
		if err := rows.Scan(&b.Job, &b.JobSum, &b.Thread, &at, &b.Hints); err != nil {
			return nil, err
		}
		b.At = time.UnixMilli(at)
		all = append(all, b)
	}
	return all, rows.Err()
}
