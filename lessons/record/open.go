package record

import (
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// Open opens the record of a learner in a file, or begins one, with the folders that it
// stands in. A file that is damaged from the start is set aside under another name and
// never written to; damage further in is met when it is read, as an error. A file of a
// newer program is an error too, and left as it is.
func Open(path, learner string) (*Record, error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, err
	}
	r, err := open(path, learner)
	if err == nil || !damaged(err) {
		return r, err
	}
	aside := path + ".damaged-" + time.Now().Format("20060102-150405.000")
	if err := setAside(path, aside); err != nil {
		return nil, err
	}
	r, err = open(path, learner)
	if err == nil {
		r.SetAside = aside
	}
	return r, err
}

// setAside gives a record and what belongs to it another name.
func setAside(path, aside string) error {
	for _, ending := range []string{"", "-wal", "-shm"} {
		if err := os.Rename(path+ending, aside+ending); err != nil && !errors.Is(err, os.ErrNotExist) {
			return fmt.Errorf("the record %s is damaged and can't be set aside: %w", path, err)
		}
	}
	return nil
}

// damaged reports whether an error says that the file is no sound database.
func damaged(err error) bool {
	code := codeOf(err)
	return code == sqlite3.SQLITE_CORRUPT || code == sqlite3.SQLITE_NOTADB
}

// busy reports whether an error says that another program holds the file.
func busy(err error) bool { return codeOf(err) == sqlite3.SQLITE_BUSY }

// codeOf is what the database calls an error; 0 for one that is not its own.
func codeOf(err error) int {
	var e *sqlite.Error
	if !errors.As(err, &e) {
		return 0
	}
	return e.Code() & 0xff // without the closer kind of it
}

func open(path, learner string) (*Record, error) {
	// Private from the first moment: the file exists before the database opens it.
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	if err := f.Close(); err != nil {
		return nil, err
	}
	// busy_timeout stands first: the other settings already need the lock.
	dsn := "file:" + escape(path) + "?_pragma=busy_timeout(20000)&_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)" +
		"&_pragma=secure_delete(ON)&_pragma=foreign_keys(ON)&_txlock=immediate"
	db, err := sql.Open("sqlite", dsn)
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(1)
	r := &Record{Learner: learner, db: db}
	if err := retry(r.migrate, time.Sleep); err != nil {
		db.Close()
		return nil, err
	}
	return r, nil
}

// escape makes a path fit for a URI.
func escape(path string) string {
	return strings.NewReplacer("%", "%25", "?", "%3f", "#", "%23").Replace(filepath.ToSlash(path))
}

// retry tries until it is done or fails. Two programs that begin one record at the same
// moment both want to set how its journal is kept; the database does not wait for that by
// itself, so it is tried again, after longer and longer waits.
func retry(try func() (done bool, err error), sleep func(time.Duration)) error {
	const longest = 4 * time.Second
	for wait := time.Millisecond; ; {
		done, err := try()
		switch {
		case busy(err) && wait < longest:
			sleep(wait)
			wait *= 2
		case done || err != nil:
			return err
		}
	}
}
