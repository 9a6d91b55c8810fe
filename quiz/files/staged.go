package files

import (
	"bufio"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
)

// Staged gathers files that are to be written all or none: they are written into a hidden
// folder first, and put in their place when the last one is whole. While it gathers nobody
// else does for the same folder.
type Staged struct {
	Dir     string
	Private bool     // readable by their owner alone: keys and marks
	Sign    string   // what a file in the folder says while others are replaced; empty puts up none
	Gone    []string // files of an earlier run that were taken away
	Mended  Mended   // what an earlier run that was killed left there

	disk  disk
	lock  *folderLock
	made  []string // folders that were made for the files, the lowest first
	tmp   string
	names []string
	open  map[*os.File]bool
}

// Stage gathers files for a folder, which need not be there yet. Whoever calls it defers
// Rollback, which does nothing to what Commit has put in its place.
func Stage(dir string) *Staged {
	return &Staged{Dir: dir, open: map[*os.File]bool{}}
}

// begin makes the folder, takes its lock, mends it and makes the hidden folder.
func (f *Staged) begin() (err error) {
	for dir := filepath.Clean(f.Dir); !isThere(dir); dir = filepath.Dir(dir) {
		f.made = append(f.made, dir)
	}
	if err := f.disk.makeAll(f.Dir); err != nil {
		return err
	}
	if f.lock, err = lockFolder(f.Dir); err != nil {
		return err
	}
	if f.Mended, err = mendLocked(f.disk, f.Dir); err != nil {
		return err
	}
	return f.disk.step("make", f.Dir, func() (err error) {
		f.tmp, err = os.MkdirTemp(f.Dir, gatheredIn)
		return err
	})
}

// Write writes one file.
func (f *Staged) Write(name string, write func(io.Writer) error) error {
	return f.write(name, f.Private, write)
}

// WritePrivate writes one file that is readable by its owner alone, among others that may
// not be.
func (f *Staged) WritePrivate(name string, write func(io.Writer) error) error {
	return f.write(name, true, write)
}

func (f *Staged) write(name string, private bool, write func(io.Writer) error) error {
	w, end, err := f.create(name, private)
	if err != nil {
		return err
	}
	if err := write(w); err != nil {
		return err
	}
	return end()
}

// Create begins a file; end makes it whole. Where another run is gathering files for the
// same folder the error is ErrHeld.
func (f *Staged) Create(name string) (w io.Writer, end func() error, err error) {
	return f.create(name, f.Private)
}

func (f *Staged) create(name string, private bool) (w io.Writer, end func() error, err error) {
	if f.tmp == "" {
		if err := f.begin(); err != nil {
			return nil, nil, err
		}
	}
	path := filepath.Join(f.tmp, newFiles, name)
	if err := f.disk.makeAll(filepath.Dir(path)); err != nil {
		return nil, nil, err
	}
	mode := os.FileMode(0o644)
	if private {
		mode = 0o600
	}
	var file *os.File
	if err := f.disk.step("write", path, func() (err error) {
		file, err = os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, mode)
		return err
	}); err != nil {
		return nil, nil, err
	}
	f.names, f.open[file] = append(f.names, name), true
	buffered := bufio.NewWriter(file)
	return buffered, func() error {
		err := buffered.Flush()
		if err == nil {
			err = f.disk.step("sync", path, file.Sync)
		}
		if e := file.Close(); err == nil {
			err = e
		}
		delete(f.open, file)
		return err
	}, nil
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

// Rollback takes away what was not put in its place, and lets other runs write there.
func (f *Staged) Rollback() {
	for file := range f.open {
		file.Close()
	}
	clear(f.open)
	if f.tmp != "" {
		_ = f.disk.removeAll(f.tmp) // else the next run sweeps it
		f.tmp = ""
	}
	if f.lock != nil {
		f.lock.free()
		f.lock = nil
	}
	for _, dir := range f.made {
		if err := f.disk.remove(dir); err != nil && !errors.Is(err, fs.ErrNotExist) {
			break // files stand there
		}
	}
}

// Holds reports whether a folder has files of such names.
func Holds(dir string, names ...*regexp.Regexp) bool { return len(written(dir, names)) > 0 }
