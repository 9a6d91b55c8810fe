package record_test

import (
	"bytes"
	"context"
	"database/sql"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// writes are all that changes a record.
var writes = map[string]func(r *record.Record) error{
	"append": func(r *record.Record) error { return r.Append(nth(50), schedule.Fold(items)) },
	"import": func(r *record.Record) error {
		_, err := importInto(r, strings.NewReader(oneLine), schedule.Fold(items))
		return err
	},
	"refold":       func(r *record.Record) error { return r.Refold(schedule.Fold(items), rule) },
	"place":        func(r *record.Record) error { return r.SetPlace("dial-book", 3) },
	"forget place": func(r *record.Record) error { return r.SetPlace("dial-book", -1) },
	"rehearsal":    func(r *record.Record) error { return r.FinishRehearsal(played(1)) },
	"begin": func(r *record.Record) error {
		return r.BeginRehearsal(record.Begun{Job: "gland-nut", At: time.UnixMilli(1)})
	},
	"test":   func(r *record.Record) error { return r.AddTest(record.Test{At: time.UnixMilli(1), Got: 11, Of: 12}) },
	"forget": func(r *record.Record) error { _, err := r.Forget(); return err },
}

const oneLine = `{"at":"2026-03-01T09:00:00Z","task":"single-depth","code":"single-depth@1-7f3a","given":"0.0613","verdict":"right"}`

// reads are all that is read from a record.
var reads = map[string]func(r *record.Record) error{
	"answers": func(r *record.Record) error {
		for _, err := range r.Answers() {
			if err != nil {
				return err
			}
		}
		return nil
	},
	"summaries":    func(r *record.Record) error { _, _, err := r.Summaries(); return err },
	"export":       func(r *record.Record) error { _, err := r.Export(&bytes.Buffer{}); return err },
	"days":         func(r *record.Record) error { _, err := r.Days(time.Unix(0, 0)); return err },
	"place":        func(r *record.Record) error { _, _, err := r.Place("dial-book"); return err },
	"situations":   func(r *record.Record) error { _, err := r.Situations("single-depth", 2); return err },
	"rehearsals":   func(r *record.Record) error { _, err := r.Rehearsals(); return err },
	"begun":        func(r *record.Record) error { _, err := r.BegunRehearsals(); return err },
	"places":       func(r *record.Record) error { _, err := r.Places(); return err },
	"last test":    func(r *record.Record) error { _, _, err := r.LastTest(); return err },
	"needs refold": func(r *record.Record) error { _, err := r.NeedsRefold(rule); return err },
}

// withPlace is a record of three answers and a place.
func withPlace(t *testing.T) *record.Record {
	t.Helper()
	r := fresh(t, 3)
	if err := r.SetPlace("dial-book", 1); err != nil {
		t.Fatal(err)
	}
	return r
}

// unchanged wants a record as withPlace made it.
func unchanged(t *testing.T, r *record.Record, after string) {
	t.Helper()
	sound(t, r, 3)
	if part, ok, err := r.Place("dial-book"); part != 1 || !ok || err != nil {
		t.Errorf("after %s the place is %d, %v, %v", after, part, ok, err)
	}
	if _, ok, err := r.LastTest(); ok || err != nil {
		t.Errorf("after %s there is a test, %v", after, err)
	}
	if begun, err := r.BegunRehearsals(); len(begun) > 0 || err != nil || len(rehearsed(t, r)) > 0 {
		t.Errorf("after %s a rehearsal is there, %v", after, err)
	}
}

// A record that can't be written can be read; what would change it is an error, and
// changes nothing.
func TestReadOnly(t *testing.T) {
	for name, write := range writes {
		r := withPlace(t)
		if err := r.Exec("PRAGMA query_only = ON"); err != nil {
			t.Fatal(err)
		}
		if err := write(r); !says(err, "readonly") {
			t.Errorf("%s: %v", name, err)
		}
		for what, read := range reads {
			if err := read(r); err != nil {
				t.Errorf("%s can't be read: %v", what, err)
			}
		}
		unchanged(t, r, name)
	}
}

// lock lets another program hold a file for writing until the function it returns is
// called.
func lock(t *testing.T, path string) (free func()) {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	c, err := db.Conn(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := c.ExecContext(context.Background(), "BEGIN IMMEDIATE"); err != nil {
		t.Fatal(err)
	}
	free = func() { c.Close(); db.Close() }
	t.Cleanup(free)
	return free
}

// lockedError is the error of a file that another program holds.
func lockedError(t *testing.T) error {
	t.Helper()
	path := filepath.Join(t.TempDir(), "r.db")
	r := open(t, path, "Ada")
	defer lock(t, path)()
	if err := r.Exec("PRAGMA busy_timeout = 0"); err != nil {
		t.Fatal(err)
	}
	err := r.Exec("CREATE TABLE x (y)")
	if !says(err, "locked") {
		t.Fatal(err)
	}
	return err
}

// Where another program holds the file for longer than one waits, a change is an error and
// changes nothing; reading goes on, and so does writing as soon as the file is free.
func TestBusy(t *testing.T) {
	for name, write := range writes {
		path := filepath.Join(t.TempDir(), "r.db")
		r := open(t, path, "Ada")
		for n := range 3 {
			if err := r.Append(nth(n), schedule.Fold(items)); err != nil {
				t.Fatal(err)
			}
		}
		if err := r.SetPlace("dial-book", 1); err != nil {
			t.Fatal(err)
		}
		if err := r.Exec("PRAGMA busy_timeout = 0"); err != nil {
			t.Fatal(err)
		}
		free := lock(t, path)
		if err := write(r); !says(err, "locked") {
			t.Errorf("%s: %v", name, err)
		}
		unchanged(t, r, name)
		free()
		if err := write(r); err != nil {
			t.Errorf("%s, when the file was free again: %v", name, err)
		}
	}
}

// Whatever fails on the way, an answer and its summary are kept both or neither, and an
// import or a new fold is whole or not there.
func TestAllOrNothing(t *testing.T) {
	for _, row := range []struct{ write, fault string }{
		{"append", "INSERT ON answers"},
		{"append", "UPDATE ON states WHEN NEW.task = ''"},
		{"append", "UPDATE ON states WHEN NEW.task = 'single-depth'"},
		{"import", "INSERT ON answers"},
		{"import", "DELETE ON states"},
		{"import", "INSERT ON states"},
		{"refold", "DELETE ON states"},
		{"refold", "INSERT ON states"},
		{"forget", "DELETE ON answers"},
		{"forget", "DELETE ON states"},
		{"forget", "DELETE ON places"},
	} {
		r := withPlace(t)
		if err := r.Exec("CREATE TEMP TRIGGER fault BEFORE " + row.fault + " BEGIN SELECT RAISE(ABORT, 'a fault put in'); END"); err != nil {
			t.Fatal(err)
		}
		if err := writes[row.write](r); !says(err, "a fault put in") {
			t.Errorf("%s, fault at %s: %v", row.write, row.fault, err)
		}
		unchanged(t, r, row.write)
		if err := r.Exec("DROP TRIGGER fault"); err != nil {
			t.Fatal(err)
		}
		if err := writes[row.write](r); err != nil {
			t.Errorf("%s, after the fault at %s was mended: %v", row.write, row.fault, err)
		}
	}
	r := fresh(t, 0)
	if err := r.Exec("CREATE TEMP TRIGGER fault BEFORE INSERT ON answers BEGIN SELECT RAISE(ABORT, 'a fault put in'); END"); err != nil {
		t.Fatal(err)
	}
	if err := writes["append"](r); !says(err, "the answer could not be kept: ") {
		t.Errorf("the error does not say what was lost: %v", err)
	}
}

// A table or a column that is gone, a value that is none: reading says so.
func TestReadingWhatIsSpoilt(t *testing.T) {
	for _, row := range []struct{ read, spoil, want string }{
		{"answers", "DROP TABLE answers", "no such table"},
		{"export", "DROP TABLE answers", "no such table"},
		{"days", "DROP TABLE answers", "no such table"},
		{"needs refold", "DROP TABLE states", "no such table"},
		{"summaries", "DROP TABLE states", "no such table"},
		{"place", "DROP TABLE places", "no such table"},
		{"last test", "DROP TABLE tests", "no such table"},
		{"answers", "UPDATE answers SET at_ms = 'yesterday' WHERE id = 2", "convert"},
		{"export", "UPDATE answers SET points = 'one' WHERE id = 2", "convert"},
		{"days", "UPDATE answers SET hint = 'perhaps' WHERE id = 2", "convert"},
		{"summaries", "UPDATE states SET state = '{' WHERE task = 'single-depth'", `the summary of "single-depth" is not as it was kept`},
		{"summaries", "UPDATE states SET state = '[]' WHERE task = ''", `the summary of "" is not as it was kept`},
		{"place", "UPDATE places SET part = 'the first'", "convert"},
		{"last test", "INSERT INTO tests (learner, at_ms, got, of) VALUES ('Ada', 'yesterday', 11, 12)", "convert"},
	} {
		r := withPlace(t)
		if err := r.Exec(row.spoil); err != nil {
			t.Fatal(err)
		}
		if err := reads[row.read](r); !says(err, row.want) {
			t.Errorf("%s after %s: %v", row.read, row.spoil, err)
		}
	}
	// Nor is anything added to what can't be read.
	for _, row := range []struct{ write, spoil, want string }{
		{"append", "UPDATE states SET state = '{' WHERE task = 'single-depth'", `the summary of "single-depth" is not as it was kept`},
		{"append", "UPDATE states SET state = '{' WHERE task = ''", `the summary of "" is not as it was kept`},
		{"append", "DROP TABLE states", "no such table"},
		{"import", "DROP TABLE answers", "no such table"},
		{"import", "UPDATE answers SET at_ms = 'yesterday' WHERE id = 2", "convert"},
		{"refold", "UPDATE answers SET at_ms = 'yesterday' WHERE id = 2", "convert"},
	} {
		r := withPlace(t)
		if err := r.Exec(row.spoil); err != nil {
			t.Fatal(err)
		}
		if err := writes[row.write](r); !says(err, row.want) {
			t.Errorf("%s after %s: %v", row.write, row.spoil, err)
		}
		if row.spoil[:4] != "DROP" {
			var n int
			if err := r.QueryRow("SELECT COUNT(*) FROM answers", &n); err != nil || n != 3 {
				t.Errorf("%s after %s: %d answers, %v", row.write, row.spoil, n, err)
			}
		}
	}
}

// A record that was closed does nothing more, and says so.
func TestClosed(t *testing.T) {
	r := withPlace(t)
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	for name, write := range writes {
		if err := write(r); !says(err, "closed") {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, read := range reads {
		if err := read(r); !says(err, "closed") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
