// Package journal keeps what happens in rooms in a file: one writer takes all events that
// wait, keeps them with one sync of the disk, and only then are they acknowledged. So a room
// full of phones that answer at once waits for one sync, not for thirty.
package journal

import (
	"bytes"
	"context"
	"database/sql"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"

	_ "modernc.org/sqlite" // the driver

	"scratchpass/calc"
	"scratchpass/lessons/class"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/files"
)

// applicationID is the number that says whose file a database is: the letters Scpc.
// Source: the SQLite database file format, offset 68.
const applicationID = 0x53637063

// schemas are the steps from an empty file to the newest form. A step is never changed once
// it has been released.
var schemas = []string{
	`CREATE TABLE rooms (code TEXT NOT NULL PRIMARY KEY, began_ms INTEGER NOT NULL, head TEXT NOT NULL) STRICT;
	CREATE TABLE events (
		room TEXT NOT NULL, seq INTEGER NOT NULL, at_ms INTEGER NOT NULL, kind TEXT NOT NULL, who TEXT NOT NULL, in_set INTEGER NOT NULL,
		place INTEGER NOT NULL, n INTEGER NOT NULL, body TEXT NOT NULL, name TEXT NOT NULL, certainty TEXT NOT NULL, once TEXT NOT NULL,
		PRIMARY KEY (room, seq)) STRICT, WITHOUT ROWID;
	CREATE UNIQUE INDEX events_once ON events (room, once);
	PRAGMA application_id = ` + fmt.Sprint(applicationID) + `;`,
}

// File is a journal in a file.
type File struct {
	db     *sql.DB
	writer *writer
	free   func() error
}

var _ class.Journal = (*File)(nil)

// openWait is how long one waits for another program that has the file.
const openWait = 2 * time.Second

// Open opens a journal, or begins one: readable by its owner alone. Two programs can't serve
// one: the second is told so. A file of something else is left as it is.
func Open(path string) (*File, error) {
	if err := ours(path); err != nil {
		return nil, err
	}
	free, err := files.Lock(path+".lock", openWait)
	if errors.Is(err, files.ErrHeld) {
		return nil, fmt.Errorf("%s is served already: by another window, or another program that is still ending", path)
	}
	if err != nil {
		return nil, err
	}
	f, err := open(path, "rwc")
	if err != nil {
		return nil, errors.Join(err, free())
	}
	f.free = free
	f.writer = newWriter(f.db)
	return f, nil
}

// OpenToRead opens a journal that may be served at the same time. Nothing can be appended.
func OpenToRead(path string) (*File, error) {
	if _, err := os.Stat(path); err != nil {
		return nil, err
	}
	if err := ours(path); err != nil {
		return nil, err
	}
	return open(path, "rw")
}

func open(path, mode string) (*File, error) {
	if mode == "rwc" { // private from the first moment
		made, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
		if err == nil {
			err = made.Close()
		}
		if err != nil {
			return nil, err
		}
	}
	db, err := sql.Open("sqlite", "file:"+files.URI(path)+"?mode="+mode+"&_pragma=busy_timeout(20000)&_pragma=synchronous(FULL)&_pragma=secure_delete(ON)&_txlock=immediate")
	if err != nil {
		return nil, err
	}
	err = migrate(db) // before the write-ahead log: the file is to have its sign from the first
	if err == nil {
		err = inWAL(db)
	}
	if err != nil {
		return nil, errors.Join(fmt.Errorf("%s: %w", path, err), db.Close())
	}
	return &File{db: db, free: func() error { return nil }}, nil
}

// inWAL makes the database write ahead: one sync for what is kept at once, and others can read
// meanwhile.
func inWAL(db *sql.DB) error {
	var mode string
	return db.QueryRow("PRAGMA journal_mode = WAL").Scan(&mode)
}

// Is reports whether a file is a journal of rooms.
func Is(path string) bool {
	begin, err := beginning(path)
	return err == nil && len(begin) >= 72 && bytes.HasPrefix(begin, []byte("SQLite format 3\x00")) && binary.BigEndian.Uint32(begin[68:]) == applicationID
}

func beginning(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, 72))
}

// ours refuses a file that is there and is no journal.
func ours(path string) error {
	begin, err := beginning(path)
	if errors.Is(err, fs.ErrNotExist) || err == nil && len(begin) == 0 {
		return nil
	}
	if err == nil && !Is(path) {
		err = fmt.Errorf("%s holds no class, and is left as it is: give another name", calc.Quoted(path))
	}
	return err
}

// migrate brings a file to the newest form, and looks through it.
func migrate(db *sql.DB) error {
	var version int
	if err := db.QueryRow("PRAGMA user_version").Scan(&version); err != nil {
		return err
	}
	if version < 0 || version > len(schemas) {
		return fmt.Errorf("the class was written by a newer program (form %d, this one knows %d): use that one", version, len(schemas))
	}
	for ; version < len(schemas); version++ {
		if _, err := db.Exec(fmt.Sprintf("BEGIN IMMEDIATE; %s PRAGMA user_version = %d; COMMIT;", schemas[version], version+1)); err != nil {
			return err
		}
	}
	var sound string
	if err := db.QueryRow("PRAGMA quick_check(1)").Scan(&sound); err != nil || sound != "ok" {
		return errors.Join(fmt.Errorf("the file is damaged: %s", sound), err)
	}
	return nil
}

// Begin keeps the head of a new room.
func (f *File) Begin(ctx context.Context, h class.Head) error {
	text, err := json.Marshal(h)
	if err != nil {
		return err
	}
	_, err = f.db.ExecContext(ctx, "INSERT INTO rooms (code, began_ms, head) VALUES ($1, $2, $3)", h.Code, h.Began.UnixMilli(), string(text))
	return err
}

// Heads are those of all rooms, the latest first.
func (f *File) Heads(ctx context.Context) ([]class.Head, error) {
	rows, err := f.db.QueryContext(ctx, "SELECT head FROM rooms ORDER BY began_ms DESC, code")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var all []class.Head
	for rows.Next() {
		var text string
		var h class.Head
		if err := rows.Scan(&text); err != nil {
			return nil, err
		}
		if err := json.Unmarshal([]byte(text), &h); err != nil {
			return nil, fmt.Errorf("the head of a room can't be read: %w", err)
		}
		all = append(all, h)
	}
	return all, rows.Err()
}

// columns are those of an event, in the order in which they are read and written.
const columns = "seq, at_ms, kind, who, in_set, place, n, body, name, certainty, once"

// After are the events of a room after one.
func (f *File) After(ctx context.Context, room string, seq int64) ([]class.Event, error) {
	rows, err := f.db.QueryContext(ctx, "SELECT "+columns+" FROM events WHERE room = $1 AND seq > $2 ORDER BY seq", room, seq)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var all []class.Event
	for rows.Next() {
		e, err := scan(rows)
		if err != nil {
			return nil, err
		}
		all = append(all, e)
	}
	return all, rows.Err()
}

// scan reads one event.
func scan(row interface{ Scan(...any) error }) (class.Event, error) {
	var e class.Event
	var at int64
	var sure string
	err := row.Scan(&e.Seq, &at, &e.Kind, &e.Who, &e.Set, &e.Place, &e.N, &e.Text, &e.Name, &sure, &e.Key)
	e.At, e.Certainty = time.UnixMilli(at).UTC(), answer.Certainty(sure)
	return e, err
}

// Follow calls do with what is kept from now on.
func (f *File) Follow(do func(room string, events []class.Event)) { f.writer.follow = do }

// Append keeps an event.
func (f *File) Append(ctx context.Context, room string, e class.Event) (class.Event, error) {
	return f.writer.append(ctx, room, e)
}

// Forget deletes a room. Nothing of it stays in the file.
func (f *File) Forget(ctx context.Context, room string) error {
	tx, err := f.db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback() //nolint:errcheck // nothing is to be done where it was committed
	for _, statement := range []string{"DELETE FROM events WHERE room = $1", "DELETE FROM rooms WHERE code = $1"} {
		if _, err := tx.ExecContext(ctx, statement, room); err != nil {
			return err
		}
	}
	if err := tx.Commit(); err != nil {
		return err
	}
	_, err = f.db.ExecContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)")
	return err
}

// Close ends the writer when it has kept what waits, and closes the file.
func (f *File) Close() error {
	if f.writer != nil {
		f.writer.close()
	}
	return errors.Join(f.db.Close(), f.free())
}
