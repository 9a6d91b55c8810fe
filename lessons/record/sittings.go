package record

import (
	"database/sql"
	"errors"
	"fmt"
	"time"
)

// ErrElsewhere says that a sitting goes on in another window or on another computer.
var ErrElsewhere = errors.New("this sitting goes on in another window: go on there")

// Sittings keeps the sitting that a learner has begun and not yet brought to its end, line
// by line. Of two programs that begin one at the same time the later one's is kept; what
// the other adds goes nowhere. Of two that go on with one, the one that is behind hears so.
type Sittings struct {
	record *Record
	id     int64 // of the sitting at hand
	last   int64 // the number of its last line that is known to be there
	unsure bool  // whether the next one is there already is not known
}

// Sittings returns where the learner's sitting is kept.
func (r *Record) Sittings() *Sittings { return &Sittings{record: r} }

// Restart begins another sitting with its first line; the one before is forgotten.
func (s *Sittings) Restart(line []byte) error {
	return s.record.change(func(tx *sql.Tx) error {
		var newest sql.NullInt64
		if err := tx.QueryRow("SELECT MAX(sitting) FROM sittings WHERE learner = $1", s.record.Learner).Scan(&newest); err != nil {
			return err
		}
		s.id = max(time.Now().UnixNano(), newest.Int64+1)
		if _, err := tx.Exec("DELETE FROM sittings WHERE learner = $1", s.record.Learner); err != nil {
			return err
		}
		s.last, s.unsure = 0, false
		_, err := tx.Exec(insertLine, s.record.Learner, s.id, 0, string(line))
		return err
	})
}

const insertLine = "INSERT INTO sittings (learner, sitting, n, line) VALUES ($1, $2, $3, $4)"

// Append adds a line to the sitting at hand. When it returns without an error, the line
// survives whatever happens next.
func (s *Sittings) Append(line []byte) error { return s.add(s.record.change, line) }

// Note is Append for a line that the flow makes anew if it is lost: should the computer of the database
// crash, the last of such lines may be gone, with nothing left that came after them.
func (s *Sittings) Note(line []byte) error { return s.add(s.record.changeSoon, line) }

func (s *Sittings) add(change func(func(*sql.Tx) error) error, line []byte) error {
	err := change(func(tx *sql.Tx) error {
		var n int64
		var newest string
		err := tx.QueryRow("SELECT n, line FROM sittings WHERE learner = $1 AND sitting = $2 ORDER BY n DESC LIMIT 1", s.record.Learner, s.id).Scan(&n, &newest)
		switch {
		case errors.Is(err, sql.ErrNoRows): // another sitting has taken its place
			return nil
		case err != nil:
			return err
		case s.unsure && n == s.last+1 && newest == string(line): // it was kept, and that was not heard of
			return nil
		case n != s.last:
			return ErrElsewhere
		}
		_, err = tx.Exec(insertLine, s.record.Learner, s.id, n+1, string(line))
		return err
	})
	if s.unsure = err != nil; !s.unsure {
		s.last++
	}
	return err
}

// Lines are the lines of the sitting that was not brought to its end; none where there is
// none. What is added then is added to it.
func (s *Sittings) Lines() (lines [][]byte, err error) {
	rows, err := s.record.db.Query(`SELECT sitting, n, line FROM sittings WHERE learner = $1 AND sitting =
		(SELECT MAX(sitting) FROM sittings WHERE learner = $2) ORDER BY n`, s.record.Learner, s.record.Learner)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var line string
		if err := rows.Scan(&s.id, &s.last, &line); err != nil {
			return nil, err
		}
		lines = append(lines, []byte(line))
	}
	return lines, rows.Err()
}

// At is how far the learner's sitting is, with the moves of a rehearsal, as a name that no other moment
// of any of theirs has; empty where none goes on.
func (s *Sittings) At() (string, error) {
	var sitting, n, log, moves int64
	err := s.record.db.QueryRow(`SELECT s.sitting, s.n, COALESCE(m.log, 0), COALESCE(m.n, 0)
		FROM (SELECT sitting, n FROM sittings WHERE learner = $1 ORDER BY sitting DESC, n DESC LIMIT 1) AS s
		LEFT JOIN (SELECT log, n FROM moves WHERE learner = $1 ORDER BY log DESC, n DESC LIMIT 1) AS m ON 1 = 1`, s.record.Learner).Scan(&sitting, &n, &log, &moves)
	if errors.Is(err, sql.ErrNoRows) {
		return "", nil
	}
	return fmt.Sprintf("%d.%d.%d.%d", sitting, n, log, moves), err
}

// ClearAll forgets whatever sitting of the learner's is stored, whoever began it.
func (s *Sittings) ClearAll() error {
	return s.record.exec("DELETE FROM sittings WHERE learner = $1", s.record.Learner)
}

// Clear forgets the sitting at hand: it has come to its end.
func (s *Sittings) Clear() error {
	return s.record.exec("DELETE FROM sittings WHERE learner = $1 AND sitting = $2", s.record.Learner, s.id)
}
