package files

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// stage gathers files that each say "new".
func stage(t *testing.T, dir string, names ...string) *Staged {
	t.Helper()
	out := Stage(dir)
	for _, name := range names {
		if err := out.Write(name, func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// before makes a folder that has three files, two of which are to be replaced and one that
// an earlier run wrote and this one does not.
func before(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "codes"), 0o700); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"key.pdf", "codes/A.txt", "key-002.pdf", "notes.txt"} {
		if err := os.WriteFile(filepath.Join(dir, filepath.FromSlash(name)), []byte("old"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

const (
	allOld = "codes/A.txt=old key-002.pdf=old key.pdf=old notes.txt=old "
	allNew = "codes/A.txt=new key.html=new key.pdf=new notes.txt=old "
)

// Whichever step fails, without a kill, the folder holds all that it held or all that is
// new. Where it can't even be put back, the next run finishes it, and the error says so.
func TestCommitFailsAtEachStep(t *testing.T) {
	broken := errors.New("the disk is gone")
	outcomes := map[string]int{}
	for _, backToo := range []bool{false, true} {
		for failing := 1; ; failing++ {
			dir := before(t)
			out := Stage(dir)
			n, failed := 0, ""
			out.Sign, out.disk.quick, out.disk.before = "unfinished", true, func(step, path string) error {
				n++
				if n == failing || failed != "" && backToo && step != "remove" {
					failed = cmp.Or(failed, step+" "+filepath.Base(path))
					return broken
				}
				return nil
			}
			err := func() error {
				for _, name := range []string{"key.pdf", "codes/A.txt", "key.html"} {
					if err := out.Write(name, func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }); err != nil {
						return err
					}
				}
				return out.Commit(true, nil, keyNames)
			}()
			out.disk.before = nil
			unfinished := (*UnfinishedError)(nil)
			if err != nil && !errors.As(err, &unfinished) && failing%2 == 0 { // killed before it could take anything away
				out.die()
				if m, err := mendKilled(dir, &killer{}); err != nil || m.Finished {
					t.Errorf("%q failed, and was put back: %+v, %v", failed, m, err)
				}
			} else {
				out.Rollback()
			}
			name := fmt.Sprintf("%q fails, and back %v", failed, backToo)
			got := holds(t, dir)
			switch {
			case errors.As(err, &unfinished):
				outcomes["unfinished"]++
				if m, err := Mend(dir); err != nil || !m.Finished || holds(t, dir) != allNew || !strings.Contains(unfinished.Error(), "run the same command again") {
					t.Errorf("%s: %v, %+v, then %v, %s", name, unfinished, m, err, holds(t, dir))
				}
			case err != nil:
				outcomes["old"]++
				if !errors.Is(err, broken) || got != allOld {
					t.Errorf("%s: %v, %s", name, err, got)
				}
			default:
				outcomes["new"]++
				if got = seen(t, dir); got != allNew || len(out.Gone) != 1 || out.Gone[0] != "key-002.pdf" {
					t.Errorf("%s: %s, gone %q", name, got, out.Gone)
				}
			}
			if failed == "" {
				break
			}
		}
	}
	t.Logf("ended %v", outcomes)
	for _, end := range []string{"old", "new", "unfinished"} {
		if outcomes[end] < 2 {
			t.Errorf("ended %v", outcomes)
		}
	}
}

// What is there stays unless it is to be replaced, and nothing of the new is put beside it.
func TestCommitWithoutReplacing(t *testing.T) {
	dir := before(t)
	out := stage(t, dir, "key.html", "key.pdf")
	told := ""
	err := out.Commit(false, func(where string) error { told = where; return os.ErrExist }, keyNames)
	out.Rollback()
	if !errors.Is(err, os.ErrExist) || told != filepath.Join(dir, "key.pdf") || holds(t, dir) != allOld {
		t.Errorf("%v for %s, %s", err, told, holds(t, dir))
	}
	out = stage(t, dir, "key.html")
	if err := out.Commit(false, nil, keyNames); err != nil || out.Gone != nil { // what an earlier run wrote more of stays
		t.Errorf("%v, gone %q", err, out.Gone)
	}
	out.Rollback()
	if got := holds(t, dir); got != strings.Replace(allOld, "key.pdf", "key.html=new key.pdf", 1) {
		t.Error(got)
	}
}

// Files for a folder that is not there yet make it, and a run that ends before it commits
// leaves none.
func TestStagedForANewFolder(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out", "keys")
	out := stage(t, dir, "key.pdf")
	w, _, err := out.Create("key.html") // begun, and never made whole
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.WriteString(w, "half"); err != nil {
		t.Fatal(err)
	}
	out.Rollback()
	if got := holds(t, parent); got != "" {
		t.Errorf("left %s", got)
	}
	out = stage(t, dir, "key.pdf", "codes/A.txt")
	if err := out.Commit(false, nil); err != nil {
		t.Fatal(err)
	}
	out.Rollback()
	if got := holds(t, parent); got != "out/keys/codes/A.txt=new out/keys/key.pdf=new " {
		t.Error(got)
	}
	Stage(dir).Rollback() // nothing was written: nothing to take away
}

// Keys and marks are readable by their owner alone, sheets by all.
func TestStagedModes(t *testing.T) {
	if os.PathSeparator != '/' {
		t.Skip("modes are those of Unix")
	}
	for private, want := range map[bool]os.FileMode{true: 0o600, false: 0o644} {
		dir := t.TempDir()
		out := Stage(dir)
		out.Private = private
		if err := out.Write("x", func(io.Writer) error { return nil }); err != nil {
			t.Fatal(err)
		}
		if err := out.Commit(false, nil); err != nil {
			t.Fatal(err)
		}
		out.Rollback()
		info, err := os.Stat(filepath.Join(dir, "x"))
		if err != nil || info.Mode().Perm()&^want != 0 {
			t.Errorf("private %v: mode %v, %v", private, info.Mode(), err)
		}
	}
}

// What can't be written is an error at once and leaves the folder as it was.
func TestStagedFilesThatFail(t *testing.T) {
	dir := before(t)
	broken := errors.New("no ink")
	out := Stage(dir)
	if err := out.Write("key.pdf", func(io.Writer) error { return broken }); !errors.Is(err, broken) {
		t.Errorf("the writer's error: %v", err)
	}
	if _, _, err := out.Create("key.pdf"); !errors.Is(err, os.ErrExist) {
		t.Errorf("two files of one name: %v", err)
	}
	if _, _, err := out.Create("key.pdf/inside"); err == nil {
		t.Error("a file below a file")
	}
	for file := range out.open {
		if err := file.Close(); err != nil { // as if the disk had gone
			t.Fatal(err)
		}
	}
	w, end, err := out.Create("key.html")
	if err != nil {
		t.Fatal(err)
	}
	for file := range out.open {
		_ = file.Close() // the one of before is closed already
	}
	if _, err := io.WriteString(w, "x"); err != nil {
		t.Fatal(err)
	}
	if err := end(); !errors.Is(err, os.ErrClosed) {
		t.Errorf("a file that could not be made whole: %v", err)
	}
	out.Rollback()
	if got := holds(t, dir); got != allOld {
		t.Error(got)
	}
	under := Stage(filepath.Join(dir, "notes.txt", "keys", "deep"))
	if _, _, err := under.Create("key.pdf"); err == nil {
		t.Error("a folder was made below a file")
	}
	under.Rollback()
}
