package content

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// mostFiles is how many files one folder of an instructor's own words has at most.
const mostFiles = 1000

// crowded is an error for a folder that has more files than that. One that is not there
// has none.
func crowded(dir string) error {
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return &fs.PathError{Op: "read", Path: dir, Err: errors.New("it is no folder")}
	}
	f, err := os.Open(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	defer f.Close()
	names, err := f.Readdirnames(mostFiles + 1)
	switch {
	case len(names) > mostFiles:
		return &fs.PathError{Op: "read", Path: dir, Err: fmt.Errorf("it has more than %d files: is it the folder you mean?", mostFiles)}
	case errors.Is(err, io.EOF):
		return nil
	}
	return err
}

// readText reads a file that someone else wrote: an ordinary one, of no more bytes than
// words have. It is looked at before it is opened, for a device may have no end.
func readText(fsys fs.FS, name string) ([]byte, error) {
	info, err := fs.Stat(fsys, name)
	if err == nil {
		err = ordinary(name, info)
	}
	if err != nil {
		return nil, err
	}
	f, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, mostBytes+1)) // it may grow while it is read
	if err == nil && len(text) > mostBytes {
		err = tooLong(name)
	}
	return text, err
}

// ordinary is an error for what is no ordinary file, or one that is too long.
func ordinary(name string, info fs.FileInfo) error {
	switch {
	case !info.Mode().IsRegular():
		return &fs.PathError{Op: "read", Path: name, Err: errors.New("it is no ordinary file")}
	case info.Size() > mostBytes:
		return tooLong(name)
	}
	return nil
}

func tooLong(name string) error {
	return &fs.PathError{Op: "read", Path: name, Err: fmt.Errorf("it has more than %d bytes, which is the most for a file of words", mostBytes)}
}
