package files

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"syscall"
)

// disk does what changes a folder, in steps; tests let it stop before any of them.
type disk struct {
	before func(step, path string) error // nil stops nothing
	quick  bool                          // does not wait for the disk, which only the power's going would show
}

func (d disk) step(name, path string, act func() error) error {
	if d.before != nil {
		if err := d.before(name, path); err != nil {
			return err
		}
	}
	if name == "sync" && d.quick {
		return nil
	}
	return act()
}

func (d disk) rename(from, to string) error {
	return d.step("rename", to, func() error { return os.Rename(from, to) })
}

// move is rename into a folder that may not be there yet.
func (d disk) move(from, to string) error {
	if err := d.makeAll(filepath.Dir(to)); err != nil {
		return err
	}
	return d.rename(from, to)
}

func (d disk) makeAll(dir string) error {
	return d.step("make", dir, func() error { return os.MkdirAll(dir, 0o755) })
}

// write writes a file that is readable by all, and waits until it is on the disk.
func (d disk) write(path string, text []byte) error {
	var f *os.File
	err := d.step("write", path, func() (err error) {
		if f, err = os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644); err == nil {
			_, err = f.Write(text)
		}
		return err
	})
	if f == nil {
		return err
	}
	if err == nil {
		err = d.step("sync", path, f.Sync)
	}
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}

// sync waits until the names in a folder are on the disk.
func (d disk) sync(dir string) error {
	return d.step("sync", dir, func() error { return syncNames(dir) })
}

// syncNames is SyncFolder where the disk can do it; not every one can.
func syncNames(dir string) error {
	err := SyncFolder(dir)
	if errors.Is(err, errors.ErrUnsupported) || errors.Is(err, syscall.EINVAL) {
		return nil
	}
	return err
}

// remove takes one file or empty folder away; that it is gone already is no error.
func (d disk) remove(path string) error {
	err := d.step("remove", path, func() error { return os.Remove(path) })
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// removeAll takes a folder away with all that is in it.
func (d disk) removeAll(dir string) error {
	var all []string
	err := filepath.WalkDir(dir, func(path string, _ fs.DirEntry, err error) error {
		if err == nil {
			all = append(all, path)
		}
		return err
	})
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	for _, path := range slices.Backward(all) {
		if e := d.remove(path); err == nil {
			err = e
		}
	}
	return err
}

// isThere reports whether something has this name.
func isThere(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}
