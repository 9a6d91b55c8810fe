package record_test

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

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
	if f, err := r.Forget(); f.Answers != 200 || err != nil {
		t.Fatal(f, err)
	}
	if files := holds(t, dir, secret); len(files) > 0 {
		t.Errorf("%v still hold it", files)
	}
	// Twice over: deleted pages are written over, and the file is made anew without them.
	if pages, err := r.Setting("freelist_count"); pages != "0" || err != nil {
		t.Errorf("%s empty pages are left, %v", pages, err)
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
	if f, err := r.Forget(); f.Answers != 0 || err != nil {
		t.Errorf("once more: %+v, %v", f, err)
	}
	sound(t, open(t, path, "Ben"), 1)
	// And one may begin again.
	if err := r.Append(nth(0), schedule.Fold(items)); err != nil {
		t.Fatal(err)
	}
	sound(t, r, 1)
}

// While another program has the record open, what lies beside it can't be deleted for certain:
// that is said, and forgetting once more does it.
func TestForgetWhileAnotherProgramHasItOpen(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "r.db")
	r := withSecrets(t, path, 20)
	record.Waits(t, time.Millisecond)
	reader := open(t, path, "Ben")
	f, err := r.Forget()
	if f.Answers != 20 || !says(err, "the answers are deleted, but a file may still hold what they were") {
		t.Errorf("%+v, %v", f, err)
	}
	if len(kept(t, r)) != 0 {
		t.Error("nothing was deleted")
	}
	reader.Close()
	if f, err := r.Forget(); f.Answers != 0 || err != nil {
		t.Errorf("once more: %+v, %v", f, err)
	}
	if files := holds(t, dir, secret); len(files) > 0 {
		t.Errorf("%v still hold it", files)
	}
}

// Forget means every copy: that of the day, damaged records that were set aside, what killed
// programs have left. Those in which others are too are named, and so are the files that
// answers were exported to.
func TestForgetMeansEveryCopy(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "r.db")
	alone := filepath.Join(dir, "alone.db")
	r := open(t, alone, "Ada") // a record of hers alone
	a := nth(0)
	a.Given = secret
	if err := r.Append(a, nil); err != nil {
		t.Fatal(err)
	}
	r.Close()
	both := filepath.Join(dir, "both.db")
	withSecrets(t, both, 3).Close()
	bens := filepath.Join(dir, "bens.db")
	open(t, bens, "Ben").Append(nth(0), nil)
	withSecrets(t, path, 5).Close()
	for from, to := range map[string]string{alone: path + ".damaged-20260101-120000", both: path + ".damaged-20260102-120000", bens: path + ".damaged-20260103-120000"} {
		if err := os.Rename(from, to); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{".scratchpass-123", ".scratchpass-dir/damaged.db", "r.db.damaged-20260104-120000", "r.db.damaged-20260101-120000-journal"} {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, name)), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(secret), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	r = open(t, path, "Ada") // makes the copy of the day
	for _, name := range []string{"answers.jsonl", "deleted.jsonl"} {
		if err := record.NoteExport(path, "Ada", filepath.Join(dir, "exports", name)); err != nil {
			t.Fatal(err)
		}
	}
	if err := record.NoteExport(path, "Ben", filepath.Join(dir, "bens.jsonl")); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "exports"), 0o700); err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{".scratchpass-77": `{"learner":"Ada","given":"` + secret + `"}`, ".scratchpass-78": `{"learner":"Ben"}`} { // killed
		if err := os.WriteFile(filepath.Join(dir, "exports", name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "exports", "answers.jsonl"), []byte(secret), 0o600); err != nil {
		t.Fatal(err)
	}
	f, err := r.Forget()
	if err != nil {
		t.Fatal(err)
	}
	short := func(paths []string) string {
		var names []string
		for _, p := range paths {
			names = append(names, filepath.Base(p))
		}
		return strings.Join(names, " ")
	}
	if got, want := short(f.Deleted), ".scratchpass-123 .scratchpass-dir r.db.damaged-20260101-120000 .scratchpass-77"; got != want {
		t.Errorf("deleted %s, want %s", got, want)
	}
	// The second of these can't be read: nobody knows what is in it.
	if got, want := short(f.Left), "r.db.damaged-20260102-120000 r.db.damaged-20260104-120000 answers.jsonl"; got != want {
		t.Errorf("named %s, want %s", got, want)
	}
	if left := strings.Join(holds(t, dir, secret), " "); left != "both.db.copy answers.jsonl r.db.damaged-20260102-120000 r.db.damaged-20260104-120000" &&
		left != "answers.jsonl r.db.damaged-20260102-120000 r.db.damaged-20260104-120000" {
		t.Errorf("the word is in %s", left)
	}
	sound(t, open(t, path, "Ben"), 1)
	if text, err := os.ReadFile(path + ".exports"); err != nil || strings.Contains(string(text), "Ada") || !strings.Contains(string(text), "bens.jsonl") {
		t.Errorf("the list of exports: %s, %v", text, err)
	}
}
