package set

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// Note is something about a table that its owner should know, though it was read.
type Note struct {
	Says string // the name of a sentence, with ${where} and ${text}
	File string
	Row  int // 0 where it is of the whole file
	Text string
}

// Where is the file and the row of a note.
func (n Note) Where() string {
	if n.Row == 0 {
		return n.File
	}
	return fmt.Sprintf("%s, row %d", n.File, n.Row)
}

// decoded is a text in UTF-8 without its byte-order mark, whatever a spreadsheet wrote it in:
// UTF-8, UTF-16 or Windows-1252. An error where letters would be lost.
func decoded(file string, text []byte, note func(Note)) ([]byte, error) {
	if order := wideOrder(text); order != nil {
		plain, whole := narrowed(text, order)
		if !whole {
			return nil, fmt.Errorf("%s is written in UTF-16, and not whole: save it again, as CSV UTF-8", file)
		}
		return bytes.TrimPrefix(plain, []byte("\ufeff")), nil
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if utf8.Valid(text) {
		return text, nil
	}
	plain, whole := windows1252(text)
	if !whole {
		return nil, fmt.Errorf("%s is written in neither UTF-8, UTF-16 nor Windows-1252, so its letters would be lost: save it as CSV UTF-8", file)
	}
	note(Note{Says: "set-note-1252", File: file})
	return plain, nil
}

// windows1252 is a text of Windows-1252 in UTF-8; whole is false where a byte is no letter.
func windows1252(text []byte) (plain []byte, whole bool) {
	for _, b := range text {
		r := charmap.Windows1252.DecodeByte(b)
		if r >= 0x80 && r < 0xa0 || r == utf8.RuneError {
			return nil, false
		}
		plain = utf8.AppendRune(plain, r)
	}
	return plain, true
}

// wideOrder is the order of bytes of a text in UTF-16, by its mark or by the zeros of plain
// letters; nil where it is none.
func wideOrder(text []byte) binary.ByteOrder {
	switch {
	case bytes.HasPrefix(text, []byte{0xff, 0xfe}):
		return binary.LittleEndian
	case bytes.HasPrefix(text, []byte{0xfe, 0xff}):
		return binary.BigEndian
	case len(text) < 4:
	case text[0] != 0 && text[1] == 0 && text[2] != 0 && text[3] == 0:
		return binary.LittleEndian
	case text[0] == 0 && text[1] != 0 && text[2] == 0 && text[3] != 0:
		return binary.BigEndian
	}
	return nil
}

// narrowed is a text of UTF-16 in UTF-8; whole is false where half a letter is missing.
func narrowed(text []byte, order binary.ByteOrder) (plain []byte, whole bool) {
	units := make([]uint16, len(text)/2)
	for i := range units {
		units[i] = order.Uint16(text[2*i:])
	}
	for _, r := range utf16.Decode(units) {
		plain = utf8.AppendRune(plain, r)
	}
	return plain, len(text)%2 == 0 && !bytes.ContainsRune(plain, utf8.RuneError)
}

// lines are the lines of a table: with line ends of its own, and without a first line that
// only says what parts the cells (sep=;). comma is that, 0 where nothing says it.
func lines(text []byte) (table []byte, comma rune, skipped int) {
	if !bytes.Contains(text, []byte("\n")) { // as an old spreadsheet writes them
		text = bytes.ReplaceAll(text, []byte("\r"), []byte("\n"))
	}
	first, rest, _ := bytes.Cut(text, []byte("\n"))
	said := strings.Trim(string(bytes.TrimSuffix(first, []byte("\r"))), `"`)
	if len(said) == len("sep=;") && strings.EqualFold(said[:4], "sep=") && strings.ContainsAny(said[4:], ",;\t|") {
		return rest, rune(said[4]), 1
	}
	return text, 0, 0
}
