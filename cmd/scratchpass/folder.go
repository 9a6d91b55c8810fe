package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// folder gathers files that are to be written all or none: they are written elsewhere
// on the same disk first, and put in their place when the last one is whole.
type folder struct {
	dir     string
	private bool // readable by their owner alone: keys and marks
	tmp     string
	names   []string
	open    map[*os.File]bool
}

func newFolder(dir string) *folder { return &folder{dir: dir, open: map[*os.File]bool{}} }

// file writes one file.
func (f *folder) file(name string, write func(io.Writer) error) error {
	w, end, err := f.begin(name)
	if err != nil {
		return err
	}
	if err := write(w); err != nil {
		return err
	}
	return end()
}

// begin begins a file; end makes it whole.
func (f *folder) begin(name string) (w io.Writer, end func() error, err error) {
	if f.tmp == "" {
		parent := filepath.Dir(filepath.Clean(f.dir))
		if info, err := os.Stat(f.dir); err == nil && info.IsDir() {
			parent = f.dir // it may be another disk than the one above it
		}
		if err := os.MkdirAll(parent, 0o755); err != nil {
			return nil, nil, err
		}
		if f.tmp, err = os.MkdirTemp(parent, ".scratchpass-*"); err != nil {
			return nil, nil, err
		}
	}
	path := filepath.Join(f.tmp, "new", name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return nil, nil, err
	}
	mode := os.FileMode(0o644)
	if f.private {
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

// keep puts the files in their place, all or none. Unless it is to replace them, what is
// there already stays, and nothing is written. stale are the beginnings of names that an
// earlier run may have written more of: replaced, they go.
func (f *folder) keep(replace bool, there func(where string) error, stale ...string) error {
	var old []string
	for _, name := range f.names {
		if _, err := os.Lstat(filepath.Join(f.dir, name)); err == nil {
			if !replace {
				return there(filepath.Join(f.dir, name))
			}
			old = append(old, name)
		}
	}
	if replace {
		old = append(old, f.stale(stale)...)
	}
	var moved []string
	back := func() { // what was moved away comes back
		for _, name := range moved {
			os.Rename(filepath.Join(f.tmp, "old", name), filepath.Join(f.dir, name))
		}
	}
	for _, name := range old {
		if err := move(filepath.Join(f.dir, name), filepath.Join(f.tmp, "old", name)); err != nil {
			back()
			return err
		}
		moved = append(moved, name)
	}
	for i, name := range f.names {
		if err := move(filepath.Join(f.tmp, "new", name), filepath.Join(f.dir, name)); err != nil {
			for _, done := range f.names[:i] {
				os.Remove(filepath.Join(f.dir, done))
			}
			back()
			return err
		}
	}
	return nil
}

// stale are the files of an earlier run that this one does not write.
func (f *folder) stale(beginnings []string) []string {
	var names []string
	for _, beginning := range beginnings {
		dir, begin := filepath.Split(beginning)
		entries, err := os.ReadDir(filepath.Join(f.dir, dir))
		if err != nil {
			continue // nothing there
		}
		for _, e := range entries {
			if name := filepath.Join(dir, e.Name()); !e.IsDir() && strings.HasPrefix(e.Name(), begin) && !slices.Contains(f.names, filepath.ToSlash(name)) {
				names = append(names, name)
			}
		}
	}
	return names
}

func move(from, to string) error {
	if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
		return err
	}
	if err := os.Rename(from, to); err != nil {
		return fmt.Errorf("%s: %w", to, err)
	}
	return nil
}

// drop takes away what was not kept.
func (f *folder) drop() {
	for file := range f.open {
		file.Close()
	}
	if f.tmp != "" {
		os.RemoveAll(f.tmp)
	}
}

// holds reports whether a folder has a file or folder whose name begins like one of these.
func holds(dir string, beginnings ...string) bool {
	entries, err := os.ReadDir(dir)
	return err == nil && slices.ContainsFunc(entries, func(e os.DirEntry) bool {
		return slices.ContainsFunc(beginnings, func(b string) bool { return strings.HasPrefix(e.Name(), b) })
	})
}
