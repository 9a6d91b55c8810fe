package record_test

import (
	"os/exec"
	"path/filepath"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"strings"
	"testing"
)

// A file that can't grow is an error that says so; what was acknowledged before is there,
// and when there is room again the record goes on.
func TestFileThatCannotGrow(t *testing.T) {
	r, fold := fresh(t, 0), schedule.Fold(items)
	if err := r.Exec("PRAGMA max_page_count = 20"); err != nil {
		t.Fatal(err)
	}
	acknowledged := fillUp(t, r, fold)
	sound(t, r, acknowledged)
	if err := r.Exec("PRAGMA max_page_count = 10000"); err != nil {
		t.Fatal(err)
	}
	if err := r.Append(nth(acknowledged), fold); err != nil {
		t.Fatal(err)
	}
	sound(t, r, acknowledged+1)
}

// The same on a disk that is full, where one can be made.
func TestFullDisk(t *testing.T) {
	dir := t.TempDir()
	if err := exec.Command("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", dir).Run(); err != nil {
		t.Skip("can't make a small disk here: ", err)
	}
	defer exec.Command("umount", dir).Run()
	path := filepath.Join(dir, "r.db")
	r, fold := open(t, path, "Ada"), schedule.Fold(items)
	acknowledged := fillUp(t, r, fold)
	r.Close()
	r, err := record.Open(path, "Ada")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	sound(t, r, acknowledged)
}

// fillUp keeps answers until one can't be kept, and returns how many could.
func fillUp(t *testing.T, r *record.Record, fold record.Fold) (acknowledged int) {
	t.Helper()
	for n := range 50_000 {
		a := nth(n)
		a.Given = strings.Repeat("x", 200)
		if err := r.Append(a, fold); err != nil {
			if n == 0 || !says(err, "the answer could not be kept: ") || !says(err, "full") {
				t.Errorf("after %d: %v", n, err)
			}
			return n
		}
	}
	t.Fatal("there is room for ever")
	return 0
}
