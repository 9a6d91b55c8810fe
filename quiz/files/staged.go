package files

import (
	"bufio"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"time"
)

// Staged gathers files that are to be written all or none: they are written elsewhere
// on the same disk first, and put in their place when the last one is whole.
type Staged struct {
	Dir     string
	Private bool // readable by their owner alone: keys and marks
	tmp     string
	names   []string
	open    map[*os.File]bool
	Gone    []string // files of an earlier run that were taken away
	only    bool     // what was moved away could not be put back: the only copy lies in tmp

	rename func(from, to string) error // os.Rename; tests let it fail
}

// Stage gathers files for a folder, which need not be there yet. Whoever calls it defers
// Rollback, which does nothing to what Commit has put in its place.
func Stage(dir string) *Staged {
	return &Staged{Dir: dir, open: map[*os.File]bool{}, rename: os.Rename}
}

// leftover is the name of a folder that files are gathered in.
const leftover = ".scratchpass-*"

// gathered is the name that a folder to gather files in gets from leftover.
var gathered = regexp.MustCompile(`^\.scratchpass-\d+$`)

// sweep takes away what a run that was killed has left: it may have keys in it. A folder
// in which anything was written within the hour may be another run's, and one that holds
// more than new files may have the only copy of old ones, or be someone else's.
func sweep(dir string) {
	entries, _ := os.ReadDir(dir) // a folder that can't be read is not swept
	for _, e := range entries {
		path := filepath.Join(dir, e.Name())
		if !e.IsDir() || !gathered.MatchString(e.Name()) {
			continue
		}
		inside, err := os.ReadDir(path)
		if err != nil || len(inside) > 1 || len(inside) == 1 && inside[0].Name() != "new" {
			continue
		}
		if time.Since(newest(path)) > time.Hour {
			os.RemoveAll(path) // what can't be taken away is in nobody's way
		}
	}
}

// newest is when something below a folder was last written; now where that can't be told.
func newest(dir string) time.Time {
	var last time.Time
	err := filepath.WalkDir(dir, func(_ string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := e.Info()
		if err == nil && info.ModTime().After(last) {
			last = info.ModTime()
		}
		return err
	})
	if err != nil {
		return time.Now()
	}
	return last
}

// Write writes one file.
func (f *Staged) Write(name string, write func(io.Writer) error) error {
	w, end, err := f.Create(name)
	if err != nil {
		return err
	}
	if err := write(w); err != nil {
		return err
	}
	return end()
}

// Create begins a file; end makes it whole.
func (f *Staged) Create(name string) (w io.Writer, end func() error, err error) {
	if f.tmp == "" {
		parent := filepath.Dir(filepath.Clean(f.Dir))
		if info, err := os.Stat(f.Dir); err == nil && info.IsDir() {
			parent = f.Dir // it may be another disk than the one above it
		}
		if err := os.MkdirAll(parent, 0o755); err != nil {
			return nil, nil, err
		}
		sweep(parent)
		if f.tmp, err = os.MkdirTemp(parent, leftover); err != nil {
			return nil, nil, err
		}
	}
	path := filepath.Join(f.tmp, "new", name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return nil, nil, err
	}
	mode := os.FileMode(0o644)
	if f.Private {
		mode = 0o600
	}
	file, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, mode)
	if err != nil {
		return nil, nil, err
	}
	f.names, f.open[file] = append(f.names, name), true
	buffered := bufio.NewWriter(file)
	return buffered, func() error {
		err := buffered.Flush()
		if err == nil {
			err = file.Sync()
		}
		if e := file.Close(); err == nil {
			err = e
		}
		delete(f.open, file)
		return err
	}, nil
}

// Commit puts the files in their place, all or none. Unless it is to replace them, what is
// there already stays, and nothing is written. earlier are the names of files that an
// earlier run may have written more of: replaced, they go, and gone has them. Nothing
// else goes.
func (f *Staged) Commit(replace bool, there func(where string) error, earlier ...*regexp.Regexp) error {
	var old, stale []string
	for _, name := range f.names {
		if _, err := os.Lstat(filepath.Join(f.Dir, name)); err == nil {
			if !replace {
				return there(filepath.Join(f.Dir, name))
			}
			old = append(old, name)
		}
	}
	if replace {
		stale = f.stale(earlier)
		old = append(old, stale...)
	}
	var moved []string
	back := func() { // what was moved away comes back
		for _, name := range moved {
			if err := f.rename(filepath.Join(f.tmp, "old", name), filepath.Join(f.Dir, name)); err != nil {
				f.only = true
			}
		}
	}
	for _, name := range old {
		if err := f.move(filepath.Join(f.Dir, name), filepath.Join(f.tmp, "old", name)); err != nil {
			back()
			return err
		}
		moved = append(moved, name)
	}
	for i, name := range f.names {
		if err := f.move(filepath.Join(f.tmp, "new", name), filepath.Join(f.Dir, name)); err != nil {
			for _, done := range f.names[:i] {
				os.Remove(filepath.Join(f.Dir, done))
			}
			back()
			return err
		}
	}
	f.Gone = stale
	return nil
}

// stale are the files of an earlier run that this one does not write.
func (f *Staged) stale(names []*regexp.Regexp) []string {
	return slices.DeleteFunc(written(f.Dir, names), func(name string) bool { return slices.Contains(f.names, name) })
}

// written lists what stands in a folder, and in its folder of codes, under names like these.
func written(dir string, names []*regexp.Regexp) []string {
	var found []string
	for _, pattern := range []string{"*", "codes/*"} {
		paths, _ := fs.Glob(os.DirFS(dir), pattern) // a folder that is not there has nothing
		for _, path := range paths {
			info, err := os.Lstat(filepath.Join(dir, path))
			if err == nil && !info.IsDir() && slices.ContainsFunc(names, func(n *regexp.Regexp) bool { return n.MatchString(path) }) {
				found = append(found, path)
			}
		}
	}
	return found
}

func (f *Staged) move(from, to string) error {
	if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
		return err
	}
	if err := f.rename(from, to); err != nil {
		return fmt.Errorf("%s: %w", to, err)
	}
	return nil
}

// Rollback takes away what was not kept.
func (f *Staged) Rollback() {
	for file := range f.open {
		file.Close()
	}
	if f.tmp != "" && !f.only {
		os.RemoveAll(f.tmp)
	}
}

// Holds reports whether a folder has files of such names.
func Holds(dir string, names ...*regexp.Regexp) bool { return len(written(dir, names)) > 0 }
