package record

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"

	"scratchpass/quiz/files"
)

// The beginning of a database file. Source: the SQLite database file format, section 1.3.
const (
	magic         = "SQLite format 3\x00"
	applicationAt = 68
)

// signs is how much of a file is looked at for signs of this program, and what is such a
// sign: the words that made its first table stand in the file.
const (
	signs     = 64 << 10
	firstSign = "CREATE TABLE answers ("
	moreSign  = "given TEXT NOT NULL, verdict TEXT NOT NULL"
)

// ours returns an error for a file that is there, has something in it, and was not written
// by this program: it is not to be written to, nor to be given another name.
func ours(path string) error {
	f, err := files.Open(path, math.MaxInt64)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	defer f.Close()
	begin, err := io.ReadAll(io.LimitReader(f, signs))
	if err != nil {
		return err
	}
	if len(begin) == 0 || signed(begin) {
		return nil
	}
	for _, ending := range []string{copyEnding, lockEnding} { // one of ours that was spoilt, or is being begun
		if _, err := os.Stat(path + ending); err == nil {
			return nil
		}
	}
	return fmt.Errorf("%s is no record of this program, and is left as it is", path)
}

// signed reports whether the beginning of a file has a sign of this program.
func signed(begin []byte) bool {
	if bytes.HasPrefix(begin, []byte(magic)) && len(begin) >= applicationAt+4 && binary.BigEndian.Uint32(begin[applicationAt:]) == applicationID {
		return true
	}
	return bytes.Contains(begin, []byte(firstSign)) && bytes.Contains(begin, []byte(moreSign))
}
