package record

import (
	"database/sql"
	"time"
)

// Lost is an answer or a rehearsal that damage has taken.
type Lost struct {
	N             int64     // its number among the learner's, from 1
	After, Before time.Time // between which others it was kept; zero where there is none on that side
}

// Lost returns the answers that damage has taken, all of them or those that the learner was
// not told of, in the order of their numbers.
func (r *Record) Lost(all bool) ([]Lost, error) { return r.lostOf("answers", "lost", all) }

// LostRehearsals is the same for rehearsals.
func (r *Record) LostRehearsals(all bool) ([]Lost, error) {
	return r.lostOf("rehearsals", "lost_rehearsals", all)
}

func (r *Record) lostOf(table, gone string, all bool) (lost []Lost, err error) {
	rows, err := r.db.Query(`SELECT n,
		COALESCE((SELECT MAX(at_ms) FROM `+table+` AS t WHERE t.learner = gone.learner AND t.n < gone.n), 0),
		COALESCE((SELECT MIN(at_ms) FROM `+table+` AS t WHERE t.learner = gone.learner AND t.n > gone.n), 0)
		FROM `+gone+` AS gone WHERE learner = $1 AND ($2 = 1 OR said = 0) ORDER BY n`, r.Learner, flag(all))
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

// LostSaid notes that the learner was told of the answers and rehearsals that damage has taken.
func (r *Record) LostSaid() error {
	return r.change(func(tx *sql.Tx) error {
		for _, table := range []string{"lost", "lost_rehearsals"} {
			if _, err := tx.Exec("UPDATE "+table+" SET said = 1 WHERE learner = $1", r.Learner); err != nil {
				return err
			}
		}
		return nil
	})
}
