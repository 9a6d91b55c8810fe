package journal

import (
	"bytes"
	"context"
	"database/sql"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"

	_ "modernc.org/sqlite" // the driver

	"scratchpass/calc"
	"scratchpass/lessons/class"
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
	*rooms
	free func() error
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
	f.writer = newWriter(f.rooms)
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
	return &File{&rooms{db: db, engine: sqlite}, func() error { return nil }}, nil
}

// sqlite lets one transaction write at a time, and its lock lets one program number events: there
// is nothing more to be locked, and nobody to be told.
var sqlite = engine{
	lock:   func(context.Context, *sql.Tx, []string) error { return nil },
	within: 30 * time.Second, // longer than it waits for a lock
	seen:   func(err error) error { return err },
	kept:   func(map[string]int64) {},
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

// Forget deletes a room. Nothing of it stays in the file.
func (f *File) Forget(ctx context.Context, room string) error {
	if err := f.rooms.Forget(ctx, room); err != nil {
		return err
	}
	_, err := f.db.ExecContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)")
	return err
}

// Close ends the writer when it has kept what waits, and closes the file.
func (f *File) Close() error {
	if f.writer != nil {
		f.writer.close()
	}
	return errors.Join(f.db.Close(), f.free())
}
