package record

import "time"

// Lost is an answer that damage has taken.
type Lost struct {
	N             int64     // its number among the learner's answers, from 1
	After, Before time.Time // between which answers it was given; zero where there is none on that side
}

// Lost returns the answers that damage has taken, all of them or those that the learner was
// not told of, in the order of their numbers.
func (r *Record) Lost(all bool) (lost []Lost, err error) {
	rows, err := r.db.Query(`SELECT n,
		COALESCE((SELECT MAX(at_ms) FROM answers WHERE answers.learner = lost.learner AND answers.n < lost.n), 0),
		COALESCE((SELECT MIN(at_ms) FROM answers WHERE answers.learner = lost.learner AND answers.n > lost.n), 0)
		FROM lost WHERE learner = ? AND (? OR NOT said) ORDER BY n`, r.Learner, all)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var l Lost
		var after, before int64
		if err := rows.Scan(&l.N, &after, &before); err != nil {
			return nil, err
		}
		if after > 0 {
			l.After = time.UnixMilli(after)
		}
		if before > 0 {
			l.Before = time.UnixMilli(before)
		}
		lost = append(lost, l)
	}
	return lost, rows.Err()
}

// LostSaid notes that the learner was told of the answers that damage has taken.
func (r *Record) LostSaid() error {
	return r.exec("UPDATE lost SET said = 1 WHERE learner = ?", r.Learner)
}
