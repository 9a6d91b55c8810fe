package record

import (
	"context"
	"errors"
	"fmt"
	"hash/crc64"
	"os"
	"slices"
	"strings"
	"time"

	"modernc.org/sqlite"

	"scratchpass/quiz/files"
)

// errDamaged says that the database itself found something wrong.
var errDamaged = errors.New("the record is damaged")

// shortFile is up to how many bytes a file is looked through each time: that takes less
// than a blink.
const shortFile = 2 << 20

// copyEnding is the ending of the copy that is made each day. It is a record by itself.
const copyEnding = ".copy"

// lookThrough looks through the whole file, unless that was done today and it is long, and
// keeps a copy of the first sound state of each day. That there is one of today is the sign
// that it was done.
func (r *Record) lookThrough(when check) error {
	today := r.copiedOn(time.Now())
	info, err := os.Stat(r.path)
	if err != nil {
		return err
	}
	if when == checkedNow || !today || info.Size() <= shortFile {
		if err := r.sound(); err != nil {
			return err
		}
	}
	if today || r.ReadOnly {
		return nil
	}
	r.copy() // without room for a copy one goes on without it
	return nil
}

// copiedOn reports whether the copy was made on a day.
func (r *Record) copiedOn(day time.Time) bool {
	info, err := os.Stat(r.path + copyEnding)
	return err == nil && info.ModTime().Format(time.DateOnly) == day.Format(time.DateOnly)
}

// sound returns an error that Damaged knows where anything in the file is not as it was
// written.
func (r *Record) sound() error {
	var found string
	if err := r.db.QueryRow("PRAGMA integrity_check(1)").Scan(&found); err != nil {
		return err
	}
	if found != "ok" {
		return fmt.Errorf("%w: %s", errDamaged, found)
	}
	if err := r.listed(); err != nil {
		return err
	}
	for _, err := range asKept(everyRow(r.db)) {
		if err != nil {
			return err
		}
	}
	for _, table := range summed {
		rows, err := readAll(r.db, "SELECT "+asides[table]+" FROM "+table)
		if err != nil {
			return err
		}
		if slices.ContainsFunc(rows, func(row []any) bool { return !wholeRow(row) }) {
			return fmt.Errorf("%w: one of the %s is not as it was kept", errDamaged, table)
		}
	}
	return errors.Join(r.complete("answers", "lost"), r.complete("rehearsals", "lost_rehearsals"))
}

// listSum is the sum over the list of the tables in the newest form, as the database keeps it.
// A letter of it that is spoilt may be a list all the same, and a wrong one.
const listSum uint64 = 0xdba4b91e5b2075c0

// listed returns an error where the list of the tables is not as it was written.
func (r *Record) listed() error {
	rows, err := readAll(r.db, "SELECT type || ' ' || name || ' ' || tbl_name || ' ' || COALESCE(sql, '') FROM sqlite_schema ORDER BY name")
	if err != nil {
		return err
	}
	h := crc64.New(table)
	for _, row := range rows {
		text, _ := row[0].(string)
		fmt.Fprintln(h, strings.Fields(text)) // however it was broken into lines
	}
	if h.Sum64() != listSum {
		return fmt.Errorf("%w: the list of its tables is another (%#x)", errDamaged, h.Sum64())
	}
	return nil
}

// complete returns an error where an answer or a rehearsal is gone and it is not known to be
// lost: the numbers of a learner's have no gaps.
func (r *Record) complete(table, lost string) error {
	rows, err := r.db.Query("SELECT learner, MAX(n) - COUNT(*) FROM (SELECT learner, n FROM " + table + " UNION SELECT learner, n FROM " + lost + ") GROUP BY learner HAVING MAX(n) <> COUNT(*)")
	if err != nil {
		return err
	}
	defer rows.Close()
	if rows.Next() {
		var learner string
		var gone int
		if err := rows.Scan(&learner, &gone); err != nil {
			return err
		}
		return fmt.Errorf("%w: %d %s of %q are gone", errDamaged, gone, table, learner)
	}
	return rows.Err()
}

// copy makes the copy of the day by the database's own means, whole or not at all. A record
// without answers and rehearsals needs none.
func (r *Record) copy() error {
	var any bool
	if err := r.db.QueryRow("SELECT EXISTS (SELECT 1 FROM answers) OR EXISTS (SELECT 1 FROM rehearsals)").Scan(&any); err != nil || !any {
		return err
	}
	return files.WriteWhole(r.path+copyEnding, func(f *os.File) error { return r.copyTo(f.Name()) })
}

// copyTo copies the whole record into another file.
func (r *Record) copyTo(path string) error {
	return r.backup(func(c copier) (*sqlite.Backup, error) { return c.NewBackup("file:" + files.URI(path)) })
}

// copier is a connection of the database that can copy all of it.
type copier interface {
	NewBackup(to string) (*sqlite.Backup, error)
	NewRestore(from string) (*sqlite.Backup, error)
}

// backup copies the whole record by the database's own means, as begin says from where to
// where.
func (r *Record) backup(begin func(copier) (*sqlite.Backup, error)) error {
	c, err := r.db.Conn(context.Background())
	if err != nil {
		return err
	}
	defer c.Close()
	return c.Raw(func(driverConn any) error {
		from, ok := driverConn.(copier)
		if !ok {
			return fmt.Errorf("the database can't copy itself: %T", driverConn)
		}
		b, err := begin(from)
		if err != nil {
			return err
		}
		_, err = b.Step(-1)
		return errors.Join(err, b.Finish())
	})
}
