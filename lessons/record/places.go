package record

import (
	"database/sql"
	"errors"
	"time"
)

// Place returns the part of a lesson at which the learner left off, from 0; ok is
// false when there is none. One behind the last part says that the lesson is finished.
func (r *Record) Place(lesson string) (part int, ok bool, err error) {
	err = r.db.QueryRow("SELECT part FROM places WHERE learner = $1 AND lesson = $2", r.Learner, lesson).Scan(&part)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, false, nil
	}
	return part, err == nil, err
}

// Left is where in a lesson a learner is.
type Left struct {
	Lesson string
	Part   int // from 0; behind the last part when the lesson is finished
}

// Places returns where the learner is in every lesson that was begun, the latest first.
func (r *Record) Places() (all []Left, err error) {
	rows, err := r.db.Query("SELECT lesson, part FROM places WHERE learner = $1 ORDER BY at_ms DESC, lesson", r.Learner)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var l Left
		if err := rows.Scan(&l.Lesson, &l.Part); err != nil {
			return nil, err
		}
		all = append(all, l)
	}
	return all, rows.Err()
}

// SetPlace remembers the part of a lesson; a part below 0 forgets it.
func (r *Record) SetPlace(lesson string, part int) error {
	if part < 0 {
		return r.exec("DELETE FROM places WHERE learner = $1 AND lesson = $2", r.Learner, lesson)
	}
	return r.exec("INSERT INTO places (learner, lesson, part, at_ms) VALUES ($1, $2, $3, $4) ON CONFLICT (learner, lesson) DO UPDATE SET part = excluded.part, at_ms = excluded.at_ms",
		r.Learner, lesson, part, time.Now().UnixMilli())
}
