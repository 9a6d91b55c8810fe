package record_test

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// unwritable mounts a folder so that nothing can be written below it.
func unwritable(t *testing.T, dir string) {
	t.Helper()
	if err := exec.Command("mount", "--bind", "-o", "ro", dir, dir).Run(); err != nil {
		t.Skip("can't make a disk here that may only be read: ", err)
	}
	t.Cleanup(func() { exec.Command("umount", dir).Run() })
}

// A record on a disk that may only be read can be looked at and exported; what would be kept is
// an error that says why.
func TestDiskThatMayOnlyBeRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	r := open(t, path, "Ada")
	for n := range 3 {
		if err := r.Append(nth(n), schedule.Fold(items)); err != nil {
			t.Fatal(err)
		}
	}
	r.Close()
	unwritable(t, filepath.Dir(path))
	r = open(t, path, "Ada")
	if !r.ReadOnly {
		t.Error("it was not noticed")
	}
	if needs, err := r.NeedsRefold(rule); !needs || err != nil {
		t.Error(needs, err)
	}
	if err := r.Refold(schedule.Fold(items), rule); err != nil {
		t.Error(err)
	}
	sound(t, r, 3)
	for name, read := range reads {
		if err := read(r); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, write := range writes {
		if name == "refold" {
			continue
		}
		if err := write(r); !errors.Is(err, record.ErrReadOnly) || !says(err, "the record may only be read") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := record.Open(filepath.Join(filepath.Dir(path), "none.db"), "Ada"); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("none there: %v", err)
	}
}

// A damaged record that can't be mended, since nothing can be written beside it or another
// program has it open, is exported as far as it can be read, and what is missing is named.
func TestExportOfWhatCannotBeMended(t *testing.T) {
	path := spoilable(t, 100, 60)
	spoil(t, path, damageKinds["a letter of a newer answer"].how)
	unwritable(t, filepath.Dir(path))
	if _, err := record.OpenChecked(path, "Ada"); !record.Damaged(err) || !says(err, "it can't be mended") {
		t.Fatal(err)
	}
	var out bytes.Buffer
	x, err := record.ExportDamaged(path, "Ada", &out)
	if x.Answers != 99 || !slices.Equal(x.Missing, []int64{91}) || err != nil || strings.Count(out.String(), "\n") != 99 {
		t.Errorf("%+v, %v", x, err)
	}
}

// While another program has a record open it is not mended under its hands; when that one is
// closed it is.
func TestNotMendedWhileOpen(t *testing.T) {
	path := spoilable(t, 100, 60)
	other := open(t, path, "Ben")
	spoil(t, path, damageKinds["a letter of a newer answer"].how)
	record.Waits(t, time.Millisecond)
	if _, err := record.Open(path, "Ada"); !record.Damaged(err) || !says(err, "while another program has it open: close that first") {
		t.Error(err)
	}
	if found := asides(t, path); len(found) > 0 {
		t.Errorf("it was set aside: %v", found)
	}
	other.Close()
	if r := open(t, path, "Ada"); r.Mended == nil || len(kept(t, r)) != 99 {
		t.Errorf("%+v", r.Mended)
	}
}

// What is tried on a copy leaves no trace, in the record or beside it.
func TestTrial(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "r.db")
	r := open(t, path, "Ada")
	for n := range 3 {
		if err := r.Append(nth(n), schedule.Fold(items)); err != nil {
			t.Fatal(err)
		}
	}
	r.Close()
	open(t, path, "Ada").Close() // makes the copy of the day
	files := func() (names []string) {
		entries, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			text, err := os.ReadFile(filepath.Join(dir, e.Name()))
			if err != nil {
				t.Fatal(err)
			}
			names = append(names, e.Name()+string(text))
		}
		return names
	}
	before := files()
	trial, err := record.OpenTrial(path, "Ada")
	if err != nil {
		t.Fatal(err)
	}
	sound(t, trial, 3)
	for n := 3; n < 20; n++ {
		if err := trial.Append(nth(n), schedule.Fold(items)); err != nil {
			t.Fatal(err)
		}
	}
	sound(t, trial, 20)
	if err := trial.Sittings().Restart([]byte("a line")); err != nil {
		t.Error(err)
	}
	if err := trial.Close(); err != nil {
		t.Error(err)
	}
	if after := files(); !slices.Equal(before, after) {
		t.Errorf("it left a trace")
	}
	sound(t, open(t, path, "Ada"), 3)
	// Where there is no record none is begun.
	none := filepath.Join(dir, "none.db")
	trial, err = record.OpenTrial(none, "Ada")
	if err != nil {
		t.Fatal(err)
	}
	defer trial.Close()
	if err := trial.Append(nth(0), schedule.Fold(items)); err != nil {
		t.Error(err)
	}
	sound(t, trial, 1)
	if _, err := os.Stat(none); !errors.Is(err, os.ErrNotExist) {
		t.Error(err)
	}
}

// A record in the midst of a change that was killed, on a disk that may only be read, is what it
// was before.
func TestHotJournalOnDiskThatMayOnlyBeRead(t *testing.T) {
	from := filepath.Join(t.TempDir(), "r.db")
	path := filepath.Join(t.TempDir(), "r.db")
	r := open(t, from, "Ada")
	if err := r.Exec("PRAGMA cache_size = 2"); err != nil {
		t.Fatal(err)
	}
	for n := range 30 {
		a := nth(n)
		a.Content = strings.Repeat("x", 300*n) // over several pages, so that some are written before the end
		err := r.Append(a, func(s record.Summary, a record.Answer, item int) record.Summary {
			for _, ending := range []string{"", "-journal"} {
				text, err := os.ReadFile(from + ending)
				if err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(path+ending, text, 0o600); err != nil {
					t.Fatal(err)
				}
			}
			return schedule.Fold(items)(s, a, item)
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	unwritable(t, filepath.Dir(path))
	r = open(t, path, "Ada")
	sound(t, r, 29)
	var out bytes.Buffer
	if x, err := r.Export(&out); x.Answers != 29 || err != nil || !r.ReadOnly {
		t.Error(x, err)
	}
	if err := r.Append(nth(99), nil); !errors.Is(err, record.ErrReadOnly) {
		t.Error(err)
	}
}
