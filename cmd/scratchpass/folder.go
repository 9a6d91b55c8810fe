package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// folder gathers files that are to be written all or none: they are written elsewhere
// on the same disk first, and put in their place when the last one is whole.
type folder struct {
	dir   string
	tmp   string
	names []string
}

func newFolder(dir string) *folder { return &folder{dir: dir} }

// file writes one file.
func (f *folder) file(name string, write func(io.Writer) error) error {
	w, end, err := f.open(name)
	if err != nil {
		return err
	}
	if err := write(w); err != nil {
		return err
	}
	return end()
}

// open begins a file; end makes it whole.
func (f *folder) open(name string) (w io.Writer, end func() error, err error) {
	if f.tmp == "" {
		parent := filepath.Dir(filepath.Clean(f.dir))
		if err := os.MkdirAll(parent, 0o755); err != nil {
			return nil, nil, err
		}
		if f.tmp, err = os.MkdirTemp(parent, ".scratchpass-*"); err != nil {
			return nil, nil, err
		}
	}
	path := filepath.Join(f.tmp, name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return nil, nil, err
	}
	file, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return nil, nil, err
	}
	f.names = append(f.names, name)
	buffered := bufio.NewWriter(file)
	return buffered, func() error {
		err := buffered.Flush()
		if err == nil {
			err = file.Sync()
		}
		if e := file.Close(); err == nil {
			err = e
		}
		return err
	}, nil
}

// keep puts the files in their place. Unless it is to replace them, what is there already
// stays, and nothing is written.
func (f *folder) keep(replace bool, there func(where string) error) error {
	for _, name := range f.names {
		if _, err := os.Stat(filepath.Join(f.dir, name)); err == nil && !replace {
			return there(filepath.Join(f.dir, name))
		}
	}
	for _, name := range f.names {
		to := filepath.Join(f.dir, name)
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		if err := os.Rename(filepath.Join(f.tmp, name), to); err != nil {
			return fmt.Errorf("%s: %w", to, err)
		}
	}
	return nil
}

// drop takes away what was not kept.
func (f *folder) drop() {
	if f.tmp != "" {
		os.RemoveAll(f.tmp)
	}
}

// holds reports whether a folder has files of a pattern.
func holds(dir, pattern string) bool {
	found, _ := filepath.Glob(filepath.Join(dir, pattern))
	return len(found) > 0
}
