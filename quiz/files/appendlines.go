package files

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
)

// Append opens a file to add lines to. A last line without an end is taken off when
// it is torn, because the disk was full or the power went; else it gets its end.
func Append(path string, torn func(last []byte) bool) (*os.File, error) {
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
	text, err := io.ReadAll(f)
	if err != nil {
		return err
	}
	whole := bytes.LastIndexByte(text, '\n') + 1
	switch last := text[whole:]; {
	case len(last) == 0:
		return nil
	case !torn(last):
		_, err = f.WriteString("\n")
		return err
	}
	return f.Truncate(int64(whole))
}

// TornMove: a move has no sign of its end, "in 0.01" may have been "in 0.015".
func TornMove([]byte) bool { return true }

// TornAnswer: an answer is an object, and half an object is none.
func TornAnswer(last []byte) bool { return last[0] == '{' && !json.Valid(last) }
