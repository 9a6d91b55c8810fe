package record

import (
	"database/sql"
	"errors"
	"time"
)

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
		return r.exec("DELETE FROM places WHERE learner = ? AND lesson = ?", r.Learner, lesson)
	}
	return r.exec("INSERT INTO places (learner, lesson, part, at_ms) VALUES (?, ?, ?, ?) ON CONFLICT (learner, lesson) DO UPDATE SET part = excluded.part, at_ms = excluded.at_ms",
		r.Learner, lesson, part, time.Now().UnixMilli())
}
