package files

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// The longest files that are read whole, by what they hold.
const (
	MostWords   = 1 << 20  // bytes of words, a blueprint, a lathe, a job, a list of codes
	MostMoves   = 4 << 20  // bytes of a log of a rehearsal
	MostAnswers = 64 << 20 // bytes of answers of a whole school
)

// Read reads a whole file, such as someone hands in: an ordinary file of at most so many
// bytes. A device, a pipe, a folder or a longer file is an error that says so; it is found
// before anything is read.
func Read(path string, most int64) ([]byte, error) {
	f, err := Open(path, most)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, most+1)) // it may grow while it is read
	if err == nil && int64(len(text)) > most {
		err = tooLong(path, most)
	}
	if err != nil {
		return nil, err
	}
	return text, nil
}

// Open opens an ordinary file of at most so many bytes to read it; what is none is an
// error, as for Read.
func Open(path string, most int64) (*os.File, error) {
	// Before it is opened: to open a pipe waits for who writes to it, and to open a device may
	// do something to it.
	info, err := os.Stat(path)
	if err == nil {
		err = ordinary(path, info, most)
	}
	if err != nil {
		return nil, err
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	// Once more: another file may have taken its name.
	if info, err = f.Stat(); err == nil {
		err = ordinary(path, info, most)
	}
	if err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

// ordinary is an error for what is no ordinary file, or one that is too long.
func ordinary(path string, info fs.FileInfo, most int64) error {
	switch {
	case info.IsDir():
		return &fs.PathError{Op: "read", Path: path, Err: errors.New("it is a folder: give the name of a file")}
	case !info.Mode().IsRegular():
		return &fs.PathError{Op: "read", Path: path, Err: errors.New("it is a device or a pipe: give the name of an ordinary file")}
	case info.Size() > most:
		return tooLong(path, most)
	}
	return nil
}

// tooLong is the error for a file of too many bytes.
func tooLong(path string, most int64) error {
	return &fs.PathError{Op: "read", Path: path, Err: fmt.Errorf("it has more than %d bytes, which is the most for such a file", most)}
}
