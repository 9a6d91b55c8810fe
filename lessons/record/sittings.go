package record

import (
	"database/sql"
	"time"
)

// Sittings keeps the sitting that a learner has begun and not yet brought to its end, line
// by line. Of two programs that begin one at the same time the later one's is kept; what
// the other adds goes nowhere.
type Sittings struct {
	record *Record
	id     int64 // of the sitting at hand
}

// Sittings returns where the learner's sitting is kept.
func (r *Record) Sittings() *Sittings { return &Sittings{record: r} }

// Restart begins another sitting with its first line; the one before is forgotten.
func (s *Sittings) Restart(line []byte) error {
	return s.record.change(func(tx *sql.Tx) error {
		var newest sql.NullInt64
		if err := tx.QueryRow("SELECT MAX(sitting) FROM sittings WHERE learner = ?", s.record.Learner).Scan(&newest); err != nil {
			return err
		}
		s.id = max(time.Now().UnixNano(), newest.Int64+1)
		if _, err := tx.Exec("DELETE FROM sittings WHERE learner = ?", s.record.Learner); err != nil {
			return err
		}
		_, err := tx.Exec("INSERT INTO sittings (learner, sitting, n, line) VALUES (?, ?, 0, ?)", s.record.Learner, s.id, string(line))
		return err
	})
}

// Append adds a line to the sitting at hand. When it returns without an error, the line
// survives whatever happens next.
func (s *Sittings) Append(line []byte) error {
	return s.record.exec(`INSERT INTO sittings (learner, sitting, n, line)
		SELECT learner, sitting, MAX(n) + 1, ? FROM sittings WHERE learner = ? AND sitting = ? GROUP BY learner, sitting`,
		string(line), s.record.Learner, s.id)
}

// Lines are the lines of the sitting that was not brought to its end; none where there is
// none. What is added then is added to it.
func (s *Sittings) Lines() (lines [][]byte, err error) {
	rows, err := s.record.db.Query(`SELECT sitting, line FROM sittings WHERE learner = ? AND sitting =
		(SELECT MAX(sitting) FROM sittings WHERE learner = ?) ORDER BY n`, s.record.Learner, s.record.Learner)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var line string
		if err := rows.Scan(&s.id, &line); err != nil {
			return nil, err
		}
		lines = append(lines, []byte(line))
	}
	return lines, rows.Err()
}

// Clear forgets the sitting at hand: it has come to its end.
func (s *Sittings) Clear() error {
	return s.record.exec("DELETE FROM sittings WHERE learner = ? AND sitting = ?", s.record.Learner, s.id)
}
