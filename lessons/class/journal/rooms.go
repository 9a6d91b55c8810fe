// Package journal keeps what happens in rooms: in a file, or in the database of a school. One
// writer takes all events that wait, keeps them with one sync of the disk, and only then are they
// acknowledged. So a room full of phones that answer at once waits for one sync, not for thirty.
package journal

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/quiz/answer"
)

// rooms are tables of rooms and events. What is asked of them is one text in all databases.
type rooms struct {
	db     *sql.DB
	engine engine
	writer *writer
}

// engine is what differs between the databases that rooms may be in.
type engine struct {
	// lock keeps other programs from numbering the events of rooms until the transaction ends.
	lock func(ctx context.Context, tx *sql.Tx, rooms []string) error
	// within is how long one thing may take; longer, and the database is out of reach.
	within time.Duration
	// seen sees how each thing ended, and says what that error is to a class.
	seen func(error) error
	// kept is told of the last events of rooms after they were acknowledged.
	kept func(last map[string]int64)
}

// Begin keeps the head of a new room.
func (r *rooms) Begin(ctx context.Context, h class.Head) error {
	return r.begin(ctx, h, "INSERT INTO rooms (code, began_ms, head) VALUES ($1, $2, $3) ON CONFLICT (code) DO NOTHING")
}

// begin keeps a head by a statement, which may want more values than a code, a time and the head.
func (r *rooms) begin(ctx context.Context, h class.Head, statement string, more ...any) error {
	text, err := json.Marshal(h)
	if err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(ctx, r.engine.within)
	defer cancel()
	done, err := r.db.ExecContext(ctx, statement, append([]any{h.Code, h.Began.UnixMilli(), string(text)}, more...)...)
	if err = r.engine.seen(err); err != nil {
		return err
	}
	if n, err := done.RowsAffected(); err != nil || n == 0 {
		return errors.Join(class.ErrTaken, err)
	}
	return nil
}

// Head is that of one room.
func (r *rooms) Head(ctx context.Context, room string) (class.Head, error) {
	all, err := r.heads(ctx, "WHERE code = $1", room)
	if err == nil && len(all) == 0 {
		err = class.ErrNoRoom
	}
	if err != nil {
		return class.Head{}, err
	}
	return all[0], nil
}

// Heads are those of all rooms, the latest first.
func (r *rooms) Heads(ctx context.Context) ([]class.Head, error) {
	return r.heads(ctx, "ORDER BY began_ms DESC, code")
}

// heads are those of some rooms.
func (r *rooms) heads(ctx context.Context, which string, values ...any) (all []class.Head, err error) {
	err = r.each(ctx, func(row scanner) error {
		var text string
		var h class.Head
		if err := row.Scan(&text); err != nil {
			return err
		}
		if err := json.Unmarshal([]byte(text), &h); err != nil {
			return fmt.Errorf("the head of a room can't be read: %w", err)
		}
		all = append(all, h)
		return nil
	}, "SELECT head FROM rooms "+which, values...)
	return all, err
}

// columns are those of an event, in the order in which they are read and written.
const columns = "seq, at_ms, kind, who, in_set, place, n, body, name, certainty, once"

// After are the events of a room after one.
func (r *rooms) After(ctx context.Context, room string, seq int64) (all []class.Event, err error) {
	err = r.each(ctx, func(row scanner) error {
		e, err := scan(row)
		all = append(all, e)
		return err
	}, "SELECT "+columns+" FROM events WHERE room = $1 AND seq > $2 ORDER BY seq", room, seq)
	return all, err
}

// scanner is a row that can be read.
type scanner interface{ Scan(...any) error }

// each calls do with the rows of a query.
func (r *rooms) each(ctx context.Context, do func(scanner) error, query string, values ...any) error {
	ctx, cancel := context.WithTimeout(ctx, r.engine.within)
	defer cancel()
	rows, err := r.db.QueryContext(ctx, query, values...)
	if err != nil {
		return r.engine.seen(err)
	}
	defer rows.Close()
	for rows.Next() {
		if err := do(rows); err != nil {
			return err
		}
	}
	return r.engine.seen(rows.Err())
}

// scan reads one event.
func scan(row scanner) (class.Event, error) {
	var e class.Event
	var at int64
	var sure string
	err := row.Scan(&e.Seq, &at, &e.Kind, &e.Who, &e.Set, &e.Place, &e.N, &e.Text, &e.Name, &sure, &e.Key)
	e.At, e.Certainty = time.UnixMilli(at).UTC(), answer.Certainty(sure)
	return e, err
}

// Follow calls do with what is kept from now on.
func (r *rooms) Follow(do func(room string, events []class.Event)) { r.writer.follow = do }

// Append keeps an event.
func (r *rooms) Append(ctx context.Context, room string, e class.Event) (class.Event, error) {
	return r.writer.append(ctx, room, e)
}

// Forget deletes a room.
func (r *rooms) Forget(ctx context.Context, room string) error {
	ctx, cancel := context.WithTimeout(ctx, r.engine.within)
	defer cancel()
	return r.engine.seen(r.forget(ctx, room))
}

func (r *rooms) forget(ctx context.Context, room string) error {
	tx, err := r.db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback() //nolint:errcheck // nothing is to be done where it was committed
	if err := r.engine.lock(ctx, tx, []string{room}); err != nil {
		return err
	}
	for _, statement := range []string{"DELETE FROM events WHERE room = $1", "DELETE FROM rooms WHERE code = $1"} {
		if _, err := tx.ExecContext(ctx, statement, room); err != nil {
			return err
		}
	}
	return tx.Commit()
}
