package record

import (
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"time"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"scratchpass/lessons/postgres"
	"scratchpass/quiz/files"
)

// Open opens the record of a learner in a file, or begins one, with the folders that it
// stands in; or on a server, at an address such as postgres://host/name. The whole of it is looked through when it is short, and when it is opened for
// the first time on a day. A damaged one is mended first, from itself and from the copy
// of an earlier day: Mended tells what became of it. A file that this program did not
// write is an error, and so is one of a newer program; both are left as they are. One that
// may only be read is opened to be read.
func Open(path, learner string) (*Record, error) { return openAs(path, learner, checkedDaily) }

// OpenChecked is Open, and looks through the whole file whenever that was done last.
func OpenChecked(path, learner string) (*Record, error) { return openAs(path, learner, checkedNow) }

// check tells when a file is looked through.
type check int

const (
	checkedDaily check = iota // when it is short, or was not looked through today
	checkedNow                // now
)

// openWait is how long one waits for who else has the file. Tests have less time.
var openWait = 20 * time.Second

// openTries is how often one begins anew when the file was found damaged: after a mending it
// is sound.
const openTries = 3

func openAs(path, learner string, when check) (*Record, error) {
	if postgres.Is(path) {
		return openShared(path, learner, when)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, err
	}
	if err := ours(path); err != nil {
		return nil, err
	}
	var mended *Mended
	for tries := 1; ; tries++ {
		r, err := openBeside(path, learner, when)
		if err == nil {
			r.Mended = mended
			return r, nil
		}
		if !Damaged(err) || tries == openTries {
			return nil, err
		}
		if mended, err = mend(path, learner, err); err != nil {
			return nil, err
		}
	}
}

// openBeside opens a file beside others that have it open, and looks through it.
func openBeside(path, learner string, when check) (*Record, error) {
	free, err := files.LockShared(path+lockEnding, openWait)
	if errors.Is(err, files.ErrHeld) {
		return nil, err
	}
	opened := open
	if Unwritable(err) { // nor can a journal be written there
		opened = openToRead
	}
	if err != nil { // a disk that has no locks: no one can mend either
		free = func() error { return nil }
	}
	r, err := opened(path, learner)
	if err == nil {
		if err = r.lookThrough(when); err == nil {
			r.free = free
			return r, nil
		}
		r.db.Close()
	}
	return nil, errors.Join(err, free())
}

// lockEnding is the ending of the file that locks stand for.
const lockEnding = ".lock"

// Damaged reports whether an error says that the file is no sound record.
func Damaged(err error) bool {
	code := codeOf(err)
	return code == sqlite3.SQLITE_CORRUPT || code == sqlite3.SQLITE_NOTADB || errors.As(err, &spoilt{}) || errors.Is(err, errDamaged)
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
	if Unwritable(err) {
		return openToRead(path, learner)
	}
	if err != nil {
		return nil, err
	}
	if err := f.Close(); err != nil {
		return nil, err
	}
	r, err := connect(path, learner, "&_pragma=synchronous(FULL)&_pragma=secure_delete(ON)&_pragma=foreign_keys(ON)&_txlock=immediate")
	if err != nil {
		return nil, err
	}
	if err := retry(r.begin, time.Sleep); err != nil {
		r.db.Close()
		return nil, err
	}
	return r, nil
}

// Unwritable reports whether an error says that nothing may be written.
func Unwritable(err error) bool {
	return errors.Is(err, fs.ErrPermission) || errors.Is(err, syscall.EROFS)
}

// openToRead opens a file that may only be read. One that a killed program left in the midst
// of a change can't be put right where it is: a copy is, in memory.
func openToRead(path, learner string) (*Record, error) {
	if _, err := os.Stat(path); err != nil {
		return nil, err
	}
	r, err := connect(path, learner, "&mode=ro")
	if err != nil {
		return nil, err
	}
	r.ReadOnly = true
	err = retry(r.migrate, time.Sleep)
	if err == nil {
		return r, nil
	}
	err = errors.Join(err, r.db.Close())
	if codeOf(err) != sqlite3.SQLITE_READONLY {
		return nil, err
	}
	return openRolledBack(path, learner)
}

// patience is how long the database waits for another program by itself.
const patience = 20 * time.Second

// connect connects to a file.
func connect(path, learner, settings string) (*Record, error) {
	// busy_timeout stands first: the other settings already need the lock.
	dsn := fmt.Sprintf("file:%s?_pragma=busy_timeout(%d)%s", files.URI(path), patience.Milliseconds(), settings)
	db, err := sql.Open("sqlite", dsn)
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(1)
	return &Record{Learner: learner, path: path, db: db, free: func() error { return nil }}, nil
}

// begin brings a file to the newest form, a step at a time. The journal is the kind that
// leaves all that is acknowledged in the one file, so that whoever copies it has all, and
// that disks of a network can have.
func (r *Record) begin() (done bool, err error) {
	if done, err = r.migrate(); !done || err != nil {
		return done, err
	}
	var mode string
	return true, r.db.QueryRow("PRAGMA journal_mode = TRUNCATE").Scan(&mode)
}

// retry tries until it is done or fails. While another program holds the file it is tried
// again, after longer and longer waits.
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
