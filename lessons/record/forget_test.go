package record_test

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// secret is what a learner typed.
const secret = "SECRETWORD"

// withSecrets is a record of Ada's in which the word stands everywhere a learner can put
// it, beside an answer of Ben's.
func withSecrets(t *testing.T, path string, answers int) *record.Record {
	t.Helper()
	r, fold := open(t, path, "Ada"), schedule.Fold(items)
	for n := range answers {
		a := nth(n)
		a.Given, a.Slip, a.Key = secret, secret, secret
		if err := r.Append(a, fold); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.SetPlace(secret, 1); err != nil {
		t.Fatal(err)
	}
	if err := r.AddTest(record.Test{At: nth(1).At, Got: 11, Of: 12}); err != nil {
		t.Fatal(err)
	}
	ben := open(t, path, "Ben")
	defer ben.Close()
	if err := ben.Append(nth(1), fold); err != nil {
		t.Fatal(err)
	}
	return r
}

// holds lists the files of a folder that hold a word.
func holds(t *testing.T, dir, word string) (files []string) {
	t.Helper()
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(p)
		if bytes.Contains(text, []byte(word)) {
			files = append(files, filepath.Base(p))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// Forgetting deletes: the words that were typed are nowhere in the files.
func TestForgetReallyDeletes(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "r.db")
	r := withSecrets(t, path, 200)
	if len(holds(t, dir, secret)) == 0 {
		t.Fatal("the word is nowhere to begin with")
	}
	if n, err := r.Forget(); n != 200 || err != nil {
		t.Fatal(n, err)
	}
	if files := holds(t, dir, secret); len(files) > 0 {
		t.Errorf("%v still hold it", files)
	}
	// Twice over: deleted pages are written over, and the file is made anew without them.
	if pages, err := r.Setting("freelist_count"); pages != "0" || err != nil {
		t.Errorf("%s empty pages are left, %v", pages, err)
	}
	if info, err := os.Stat(path + "-wal"); err != nil || info.Size() != 0 {
		t.Errorf("a log is left: %v, %v", info, err)
	}
	of, n, err := r.Summaries()
	if len(of) != 0 || n != 0 || err != nil || len(kept(t, r)) != 0 {
		t.Errorf("%v, %d, %v", of, n, err)
	}
	if _, ok, err := r.Place(secret); ok || err != nil {
		t.Errorf("a place is left, %v", err)
	}
	if _, ok, err := r.LastTest(); ok || err != nil {
		t.Errorf("a test is left, %v", err)
	}
	if n, err := r.Forget(); n != 0 || err != nil {
		t.Errorf("once more: %d, %v", n, err)
	}
	sound(t, open(t, path, "Ben"), 1)
	// And one may begin again.
	if err := r.Append(nth(0), schedule.Fold(items)); err != nil {
		t.Fatal(err)
	}
	sound(t, r, 1)
}

// While another program reads, what was deleted can't be taken out of the log: that is
// said, and forgetting once more does it.
func TestForgetWhileAnotherProgramReads(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "r.db")
	r := withSecrets(t, path, 20)
	if err := r.Exec("PRAGMA busy_timeout = 0"); err != nil {
		t.Fatal(err)
	}
	reader := open(t, path, "Ben")
	for _, err := range reader.Answers() {
		if err != nil {
			t.Fatal(err)
		}
		n, err := r.Forget() // in the middle of Ben's reading
		if n != 20 || !says(err, "the answers are deleted, but the file may still hold what they were") {
			t.Errorf("%d, %v", n, err)
		}
		if len(kept(t, r)) != 0 {
			t.Error("nothing was deleted")
		}
	}
	if len(holds(t, dir, secret)) == 0 {
		t.Error("the files are clean, so nothing need have been said")
	}
	if n, err := r.Forget(); n != 0 || err != nil {
		t.Errorf("once more: %d, %v", n, err)
	}
	if files := holds(t, dir, secret); len(files) > 0 {
		t.Errorf("%v still hold it", files)
	}
}
