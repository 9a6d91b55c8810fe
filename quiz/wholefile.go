package quiz

import (
	"os"
	"path/filepath"
)

// WriteWhole writes a file whole or not at all: beside its place first, and into it when
// the last byte is on the disk.
func WriteWhole(path string, write func(*os.File) error) error {
	f, err := os.CreateTemp(filepath.Dir(path), ".scratchpass-*")
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
		err = os.Rename(f.Name(), path)
	}
	return err
}
