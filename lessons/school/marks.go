package school

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/postgres"
	"scratchpass/quiz/set"
)

// Marks keeps what came of each room, worked out. A room is a list of what happened in it, and its
// marks are made from that with the numbers that were drawn; a later program may draw others. What is
// kept here can be read for good.
type Marks struct{ DB *postgres.DB }

// CameOf is what came of a room.
type CameOf struct {
	Ended bool      `json:"ended"`
	Came  int       `json:"came"` // people
	Sets  []SetMark `json:"sets"`
}

// SetMark is what came of one set of a room.
type SetMark struct {
	Set      string       `json:"set"`
	Title    string       `json:"title"`
	Of       []set.Result `json:"of"`       // those on the roster
	Visitors []string     `json:"visitors"` // who came and is not on it
}

// CameOfRoom works out what came of a room.
func CameOfRoom(room *class.Room) (CameOf, error) {
	came := room.Came()
	c := CameOf{Ended: room.Ended, Came: len(came), Sets: []SetMark{}}
	visitors := []string{}
	for _, p := range came {
		if p.Visitor {
			visitors = append(visitors, p.Name)
		}
	}
	for n, asked := range room.Sets {
		m := SetMark{Set: asked.Blueprint.Set, Title: asked.Blueprint.Title, Of: []set.Result{}, Visitors: visitors}
		for _, p := range room.People() {
			if p.Visitor {
				continue
			}
			one, err := room.Marked(p, n)
			if err != nil {
				return CameOf{}, err
			}
			m.Of = append(m.Of, one)
		}
		c.Sets = append(c.Sets, m)
	}
	return c, nil
}

// ErrNoMarks says that nothing is kept of a room yet.
var ErrNoMarks = errors.New("nothing is kept of what came of the room")

// Of is what is kept of a room; ErrNoMarks where nothing is.
func (m Marks) Of(ctx context.Context, room string) (c CameOf, err error) {
	var text string
	err = m.DB.QueryRowContext(ctx, "SELECT came FROM marks WHERE room = $1", room).Scan(&text)
	if errors.Is(err, sql.ErrNoRows) {
		return c, ErrNoMarks
	}
	if err != nil {
		return c, err
	}
	return c, json.Unmarshal([]byte(text), &c)
}

// OfRooms is what is kept of some rooms, by code, without what each of them was marked.
func (m Marks) OfRooms(ctx context.Context, rooms []string) (map[string]CameOf, error) {
	rows, err := m.DB.QueryContext(ctx, "SELECT room, CAST(CAST(came AS json) ->> 'ended' AS boolean), CAST(CAST(came AS json) ->> 'came' AS int) FROM marks WHERE room = ANY($1)", append([]string{}, rooms...))
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	all := map[string]CameOf{}
	for rows.Next() {
		var room string
		var c CameOf
		if err := rows.Scan(&room, &c.Ended, &c.Came); err != nil {
			return nil, err
		}
		all[room] = c
	}
	return all, rows.Err()
}

// Keep keeps what came of a room up to its event seq. What was kept of later ones stays.
func (m Marks) Keep(ctx context.Context, room string, seq int64, c CameOf) error {
	text, err := json.Marshal(c)
	if err != nil {
		return err
	}
	_, err = m.DB.ExecContext(ctx, `INSERT INTO marks (room, seq, came) SELECT code, $2, $3 FROM rooms WHERE code = $1
		ON CONFLICT (room) DO UPDATE SET seq = excluded.seq, came = excluded.came WHERE marks.seq < excluded.seq`, room, seq, string(text))
	return err
}

// Unended are the rooms of some groups that a program began which draws other numbers, and that have not
// ended as far as it was kept, the latest first.
func (m Marks) Unended(ctx context.Context, groups []string, draws int) ([]string, error) {
	return m.codes(ctx, `SELECT r.code FROM rooms r LEFT JOIN marks m ON m.room = r.code
		WHERE r.of_group = ANY($1) AND CAST(CAST(r.head AS json) ->> 'draws' AS int) <> $2
		AND NOT COALESCE(CAST(CAST(m.came AS json) ->> 'ended' AS boolean), false) ORDER BY r.began_ms DESC, r.code`, groups, draws)
}

// changes is how long ago a room was begun in which something may still happen.
const changes = 60 * 24 * time.Hour

// Wanted says of which rooms marks are to be kept.
type Wanted struct {
	Groups []string
	But    []string  // codes that can't be worked out
	Draws  int       // begun by a program that draws these numbers
	Before time.Time // a room in which something happened later has time
	Most   int
}

// Behind are rooms of which less is kept than happened in them, those begun first before others.
func (m Marks) Behind(ctx context.Context, w Wanted) ([]string, error) {
	// Most rooms are of long ago and settled: no event of theirs is looked up, and no head is read.
	rooms, err := m.codes(ctx, `SELECT code FROM (SELECT r.code, r.head, r.began_ms FROM rooms r LEFT JOIN marks m ON m.room = r.code
		CROSS JOIN LATERAL (SELECT seq, at_ms FROM events WHERE room = r.code ORDER BY seq DESC LIMIT 1) AS last
		WHERE r.of_group = ANY($5) AND NOT r.code = ANY($6) AND (m.room IS NULL OR r.began_ms > $1) AND (m.room IS NULL OR m.seq < last.seq) AND last.at_ms <= $2 OFFSET 0) AS behind
		WHERE CAST(CAST(head AS json) ->> 'draws' AS int) = $3 ORDER BY began_ms LIMIT $4`,
		w.Before.Add(-changes).UnixMilli(), w.Before.UnixMilli(), w.Draws, w.Most, append([]string{}, w.Groups...), append([]string{}, w.But...))
	if err != nil {
		err = fmt.Errorf("rooms whose marks are behind: %w", err)
	}
	return rooms, err
}

// codes are those of rooms that a query finds.
func (m Marks) codes(ctx context.Context, query string, values ...any) (rooms []string, err error) {
	rows, err := m.DB.QueryContext(ctx, query, values...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var code string
		if err := rows.Scan(&code); err != nil {
			return nil, err
		}
		rooms = append(rooms, code)
	}
	return rooms, rows.Err()
}
