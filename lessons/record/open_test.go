package record_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"

	"scratchpass/lessons/record"
)

func TestOpenWhereNothingCanBeWritten(t *testing.T) {
	dir := t.TempDir()
	if r, err := record.Open(filepath.Join(dir, "not", "yet", "there", "r.db"), "Ada"); err != nil {
		t.Error("folders that are not there are made: ", err)
	} else {
		r.Close()
	}
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for path, why := range map[string]string{
		filepath.Join(file, "r.db"):         "a file where a folder should be",
		filepath.Join(file, "deep", "r.db"): "further up too",
		dir:                                 "a folder where the file should be",
	} {
		var e *fs.PathError
		if r, err := record.Open(path, "Ada"); r != nil || !errors.As(err, &e) {
			t.Errorf("%v: %s", err, why)
		}
	}
}

// A file of a form that this program does not know is refused, and left as it is.
func TestNewerFormIsRefused(t *testing.T) {
	for _, version := range []int{record.Newest + 1, 99, -1} {
		path := filepath.Join(t.TempDir(), "new.db")
		open(t, path, "Ada").Close()
		do(t, path, fmt.Sprintf("PRAGMA user_version = %d; CREATE TABLE news (of TEXT)", version))
		before, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		_, err = record.Open(path, "Ada")
		if !says(err, fmt.Sprintf("newer program (form %d, this one knows %d)", version, record.Newest)) {
			t.Errorf("form %d: %v", version, err)
		}
		if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) {
			t.Errorf("form %d: the file was changed, %v", version, err)
		}
		if others, _ := filepath.Glob(path + ".damaged*"); len(others) > 0 {
			t.Errorf("form %d: it was taken for damaged", version)
		}
	}
}

// Two programs that open an old file at once both want to take it a step further: the
// second finds it done.
func TestStepsAreTakenOnce(t *testing.T) {
	r := fresh(t, 2)
	for version := range record.Newest {
		if err := r.Step(version); err != nil {
			t.Errorf("a step that another program has taken: %v", err)
		}
	}
	sound(t, r, 2)

}

// While another program holds the file, opening is tried again after longer and longer
// waits, for about eight seconds in all; any other error, and being done, end it at once.
func TestOpeningIsTriedAgain(t *testing.T) {
	locked := lockedError(t)
	other := errors.New("something else")
	for _, row := range []struct {
		outcomes []error // of each try; nil is one step done
		want     error
		waits    int
		why      string
	}{
		{nil, nil, 0, "done at once"},
		{[]error{nil, nil}, nil, 0, "steps are not waited for"},
		{[]error{locked, locked, nil}, nil, 2, "held at first"},
		{[]error{other}, other, 0, "waiting helps nothing"},
		{[]error{locked, other}, other, 1, "nor after the file was let go"},
	} {
		waits := 0
		err := record.Retry(func() (bool, error) {
			if len(row.outcomes) == 0 {
				return true, nil
			}
			err := row.outcomes[0]
			row.outcomes = row.outcomes[1:]
			return false, err
		}, func(time.Duration) { waits++ })
		if err != row.want || waits != row.waits {
			t.Errorf("%v after %d waits: %s", err, waits, row.why)
		}
	}
	var waits []time.Duration
	sum := time.Duration(0)
	err := record.Retry(func() (bool, error) { return false, locked }, func(d time.Duration) {
		waits = append(waits, d)
		sum += d
	})
	if err != locked || len(waits) != 12 || waits[0] != time.Millisecond || waits[11] != 2048*time.Millisecond || sum != 4095*time.Millisecond {
		t.Errorf("%v after %v, %v in all", err, waits, sum)
	}
}

// What this program did not write is left as it is, whatever it is: no table is put into it,
// and it gets no other name.
func TestOnlyOurFiles(t *testing.T) {
	dir := t.TempDir()
	database := filepath.Join(dir, "other.db")
	do(t, database, "CREATE TABLE tests (of_another_program TEXT)")
	empty := filepath.Join(dir, "no-tables.db")
	do(t, empty, "CREATE TABLE x (y); DROP TABLE x")
	notes := filepath.Join(dir, "notes.txt")
	if err := os.WriteFile(notes, []byte("10 TPI: 0.0613 deep\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{database, empty, notes} {
		before, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := record.Open(path, "Ada"); !says(err, path) || !says(err, "is no record of this program, and is left as it is") {
			t.Errorf("%s: %v", path, err)
		}
		if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) {
			t.Errorf("%s was changed, %v", path, err)
		}
	}
	if entries, err := os.ReadDir(dir); len(entries) != 3 || err != nil {
		t.Errorf("%v, %v", entries, err)
	}
	nothing := filepath.Join(dir, "empty.db") // as a program leaves it that was killed when it began
	if err := os.WriteFile(nothing, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	open(t, nothing, "Ada")
}
