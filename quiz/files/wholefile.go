// Package files writes what must survive a kill at any moment: whole files, folders that
// are put in place all or none, and lines added one by one.
package files

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// WriteWhole writes a file whole or not at all: beside its place first, and into it when
// the last byte is on the disk. What a run that was killed left there is swept away.
func WriteWhole(path string, write func(*os.File) error) error {
	return writeBeside(path, write, os.Rename)
}

// WriteNew is WriteWhole for a file that is not there yet, readable by its owner alone.
// Where one is there it stays, and the error is fs.ErrExist: of two runs one is first.
func WriteNew(path string, write func(*os.File) error) error {
	return writeNew(path, write, os.Link)
}

func writeNew(path string, write func(*os.File) error, link func(from, to string) error) error {
	return writeBeside(path, write, func(from, to string) error {
		err := link(from, to)
		if err == nil || errors.Is(err, fs.ErrExist) {
			return err
		}
		// A disk without links, such as a stick: the name is taken first, by one run alone.
		f, err := os.OpenFile(to, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
		if err != nil {
			return err
		}
		if err := f.Close(); err != nil {
			return err
		}
		return os.Rename(from, to)
	})
}

func writeBeside(path string, write func(*os.File) error, put func(from, to string) error) error {
	dir := filepath.Dir(path)
	sweepFiles(dir)
	f, err := os.CreateTemp(dir, gatheredIn) // readable by its owner alone
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // does nothing once it has been renamed
	err = write(f)
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = put(f.Name(), path)
	}
	if err == nil {
		err = syncNames(dir)
	}
	return err
}
