package files

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"
)

// holds is what a folder holds: names and texts, of hidden names the name alone.
func holds(t *testing.T, dir string) string {
	t.Helper()
	text := ""
	err := filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if err != nil || path == dir || e.IsDir() {
			return err
		}
		name, err := filepath.Rel(dir, path)
		if err != nil {
			return err
		}
		inside, err := os.ReadFile(path)
		text += fmt.Sprintf("%s=%s ", filepath.ToSlash(name), inside)
		return err
	})
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		t.Fatal(err)
	}
	return text
}

// saying writes a text.
func saying(text string) func(*os.File) error {
	return func(f *os.File) error { _, err := f.WriteString(text); return err }
}

// A file is written whole or stays as it was, and nothing is left beside it.
func TestWriteWhole(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "marks.csv")
	if err := WriteWhole(path, saying("first")); err != nil {
		t.Fatal(err)
	}
	if err := WriteWhole(path, saying("second")); err != nil {
		t.Fatal(err)
	}
	full := errors.New("no space left")
	err := WriteWhole(path, func(f *os.File) error {
		if _, err := f.WriteString("half"); err != nil {
			return err
		}
		return full
	})
	if !errors.Is(err, full) || holds(t, dir) != "marks.csv=second " {
		t.Errorf("after %v: %s", err, holds(t, dir))
	}
	if err := WriteWhole(filepath.Join(dir, "not", "there.csv"), saying("x")); err == nil {
		t.Error("a file was written into a folder that is not there")
	}
	if err := WriteWhole(path, func(f *os.File) error { return f.Close() }); err == nil || holds(t, dir) != "marks.csv=second " {
		t.Errorf("a file that could not be kept on the disk: %v, %s", err, holds(t, dir))
	}
	if err := os.Mkdir(filepath.Join(dir, "folder"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := WriteWhole(filepath.Join(dir, "folder"), saying("x")); err == nil || holds(t, dir) != "marks.csv=second " {
		t.Errorf("in the place of a folder: %v, %s", err, holds(t, dir))
	}
}

// What a run that was killed left beside the place of a file goes when the next is written
// there, unless someone may be writing it still; folders of others stay.
func TestWriteWholeSweeps(t *testing.T) {
	dir := t.TempDir()
	for name, age := range map[string]time.Duration{gatheredIn + "1": 2 * time.Hour, gatheredIn + "2": time.Minute, gatheredIn + "notes": 2 * time.Hour} {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, nil, 0o600); err != nil {
			t.Fatal(err)
		}
		then := time.Now().Add(-age)
		if err := os.Chtimes(path, then, then); err != nil {
			t.Fatal(err)
		}
	}
	if err := WriteWhole(filepath.Join(dir, "x"), saying("x")); err != nil {
		t.Fatal(err)
	}
	if got := holds(t, dir); got != ".scratchpass-2= .scratchpass-notes= x=x " {
		t.Errorf("left %s", got)
	}
}

// Of many runs that want to be first one is, whether the disk has links or not; the file
// is that run's, whole.
func TestWriteNewIsFirstOnce(t *testing.T) {
	noLinks := func(string, string) error { return errors.ErrUnsupported }
	for name, link := range map[string]func(from, to string) error{"links": os.Link, "no links": noLinks} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			path := filepath.Join(dir, "secret")
			const runs = 20
			var wait sync.WaitGroup
			errs := make([]error, runs)
			for i := range runs {
				wait.Go(func() { errs[i] = writeNew(path, saying(fmt.Sprintf("run %02d", i)), link) })
			}
			wait.Wait()
			first := -1
			for i, err := range errs {
				switch {
				case err == nil && first < 0:
					first = i
				case err == nil:
					t.Errorf("runs %d and %d were first", first, i)
				case !errors.Is(err, fs.ErrExist):
					t.Errorf("run %d: %v", i, err)
				}
			}
			if want := fmt.Sprintf("secret=run %02d ", first); holds(t, dir) != want {
				t.Errorf("got %s, want %s", holds(t, dir), want)
			}
			if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 && os.PathSeparator == '/' {
				t.Errorf("mode %v, %v", info.Mode(), err)
			}
		})
	}
	if err := WriteNew(filepath.Join(t.TempDir(), "not", "there"), saying("x")); err == nil {
		t.Error("a file was written into a folder that is not there")
	}
}

// A place that no lines can be added to is an error, and so is one that can't be read.
func TestAppendToWhatIsNoFile(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "lines")
	if err := os.WriteFile(file, []byte("whole\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{dir, filepath.Join(file, "below"), filepath.Join(dir, "not", "there")} {
		if f, err := Append(path, TornAnswer); err == nil {
			t.Errorf("%s can be added to: %v", path, f.Close())
		}
	}
	if got := holds(t, dir); got != "lines=whole\n " {
		t.Errorf("left %q", got)
	}
}
