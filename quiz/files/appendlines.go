package files

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"math"
	"os"
)

// Append opens a file to add lines to. A last line without an end is taken off when
// it is torn, because the disk was full or the power went; else it gets its end. What is no
// ordinary file is an error, as for Read.
func Append(path string, torn func(last []byte) bool) (*os.File, error) {
	if info, err := os.Stat(path); err == nil {
		if err := ordinary(path, info, math.MaxInt64); err != nil {
			return nil, err
		}
	}
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	err = mendLastLine(f, torn)
	if e := f.Close(); err == nil {
		err = e
	}
	if err != nil {
		return nil, err
	}
	// Each line goes to the end, wherever another program has moved that to.
	return os.OpenFile(path, os.O_APPEND|os.O_WRONLY, 0o600)
}

func mendLastLine(f *os.File, torn func(last []byte) bool) error {
	whole, last, err := lastLine(f)
	switch {
	case err != nil || len(last) == 0:
		return err
	case !torn(last):
		_, err = f.WriteAt([]byte("\n"), whole+int64(len(last)))
		return err
	}
	return f.Truncate(whole)
}

// lastLine is what stands behind the last end of a line, and where it begins. It is looked
// for from the end: the file may be long.
func lastLine(f *os.File) (begins int64, last []byte, err error) {
	info, err := f.Stat()
	if err != nil {
		return 0, nil, err
	}
	for size, piece := info.Size(), int64(4096); ; piece *= 4 {
		piece = min(piece, size)
		last = make([]byte, piece)
		if _, err := f.ReadAt(last, size-piece); err != nil && !errors.Is(err, io.EOF) {
			return 0, nil, err
		}
		if end := bytes.LastIndexByte(last, '\n') + 1; end > 0 || piece == size {
			return size - piece + int64(end), last[end:], nil
		}
	}
}

// TornMove: a move has no sign of its end, "in 0.01" may have been "in 0.015".
func TornMove([]byte) bool { return true }

// TornAnswer: an answer is an object, and half an object is none.
func TornAnswer(last []byte) bool { return last[0] == '{' && !json.Valid(last) }
