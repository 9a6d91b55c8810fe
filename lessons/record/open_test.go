package record_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
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
	if os.Geteuid() == 0 {
		return // to whom every file is open
	}
	if err := os.Chmod(file, 0o400); err != nil {
		t.Fatal(err)
	}
	if _, err := record.Open(file, "Ada"); !errors.Is(err, fs.ErrPermission) {
		t.Errorf("a file that may only be read: %v", err)
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
// second finds it done. A step that fails is undone.
func TestStepsAreTakenOnce(t *testing.T) {
	r := fresh(t, 2)
	for version := range record.Newest {
		if err := r.Step(version); err != nil {
			t.Errorf("a step that another program has taken: %v", err)
		}
	}
	sound(t, r, 2)

	path := filepath.Join(t.TempDir(), "other.db")
	do(t, path, "CREATE TABLE tests (of_another_program TEXT)") // in the way of the second step
	if _, err := record.Open(path, "Ada"); !says(err, "tests already exists") {
		t.Errorf("a database of something else: %v", err)
	}
	do(t, path, "DROP TABLE tests")
	if r := open(t, path, "Ada"); r.Append(nth(0), nil) != nil || len(kept(t, r)) != 1 {
		t.Error("what the step had done before it failed is in its way now")
	}
}

// A damaged file is set aside, whole, and a new one begun.
func TestDamagedFileIsSetAside(t *testing.T) {
	for name, spoil := range map[string]func([]byte) []byte{
		"no database": func([]byte) []byte { return []byte(strings.Repeat("this is no database ", 500)) },
		"torn header": func(b []byte) []byte { copy(b[20:], "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"); return b },
		"torn schema": func(b []byte) []byte { copy(b[100:], bytes.Repeat([]byte{0xff}, 1000)); return b },
	} {
		path, spoilt := spoiltRecord(t, spoil)
		r, err := record.Open(path, "Ada")
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if !strings.HasPrefix(r.SetAside, path+".damaged-") {
			t.Errorf("%s: set aside as %q", name, r.SetAside)
		}
		was, err := os.ReadFile(r.SetAside)
		if err != nil || !bytes.Equal(was, spoilt) {
			t.Errorf("%s: what was set aside is not what was there (%v)", name, err)
		}
		if err := r.Append(nth(1), nil); err != nil || len(kept(t, r)) != 1 {
			t.Errorf("%s: the new one holds %d answers, %v", name, len(kept(t, r)), err)
		}
		r.Close()
		r = open(t, path, "Ada")
		if r.SetAside != "" || len(kept(t, r)) != 1 {
			t.Errorf("%s: the new one was set aside as %q", name, r.SetAside)
		}
	}
}

// spoiltRecord is a record of a hundred answers whose file was changed.
func spoiltRecord(t *testing.T, spoil func([]byte) []byte) (path string, spoilt []byte) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "r.db")
	r := open(t, path, "Ada")
	for n := range 100 {
		if err := r.Append(nth(n), nil); err != nil {
			t.Fatal(err)
		}
	}
	r.Close()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	spoilt = spoil(text)
	if err := os.WriteFile(path, spoilt, 0o600); err != nil {
		t.Fatal(err)
	}
	return path, bytes.Clone(spoilt)
}

// Damage further in is no reason to begin anew: the file opens, and reading says what is
// wrong instead of giving a part for the whole.
func TestDamageFurtherIn(t *testing.T) {
	path, _ := spoiltRecord(t, func(b []byte) []byte {
		for page := 2; page < len(b)/4096; page++ {
			copy(b[page*4096:], bytes.Repeat([]byte{0xff}, 200))
		}
		return b
	})
	r := open(t, path, "Ada")
	if r.SetAside != "" {
		t.Fatal("it was set aside")
	}
	read, failed := 0, error(nil)
	for _, err := range r.Answers() {
		if err != nil {
			failed = err
			break
		}
		read++
	}
	if !says(failed, "malformed") || read == 100 {
		t.Errorf("%d of 100 answers, %v", read, failed)
	}
	var out bytes.Buffer
	if n, err := r.Export(&out); !says(err, "malformed") {
		t.Errorf("%d exported, %v", n, err)
	}
}

func TestRecordThatCannotBeSetAside(t *testing.T) {
	dir := t.TempDir()
	path, aside := filepath.Join(dir, "r.db"), filepath.Join(dir, "aside")
	if err := os.WriteFile(path, []byte("damaged"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join(aside, "in the way"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := record.SetAsideAs(path, aside); !says(err, "is damaged and can't be set aside") {
		t.Error(err)
	}
	if text, err := os.ReadFile(path); string(text) != "damaged" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
	// What belongs to the record goes with it; what is not there need not.
	if err := os.WriteFile(path+"-wal", []byte("its log"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := record.SetAsideAs(path, filepath.Join(dir, "free")); err != nil {
		t.Error(err)
	}
	if text, err := os.ReadFile(filepath.Join(dir, "free-wal")); string(text) != "its log" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
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
