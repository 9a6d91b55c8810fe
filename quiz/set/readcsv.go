package set

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"scratchpass/calc"
	"scratchpass/content"
)

// header is the names of the columns.
type header struct {
	names []string // as written
	at    map[string]int
	comma bool // cells are parted by semicolons, as where a comma stands before decimals
}

// line is one row with its number in the file.
type line struct {
	row   int
	cells []string
}

// has reports whether all of these columns are there.
func (h header) has(names ...string) bool {
	for _, n := range names {
		if _, ok := h.at[n]; !ok {
			return false
		}
	}
	return true
}

// of returns a cell by the name of its column, "" where there is none.
func (h header) of(l line, name string) string {
	i, ok := h.at[name]
	if !ok || i >= len(l.cells) {
		return ""
	}
	return strings.TrimSpace(l.cells[i])
}

// who is whose row it is, by name or id; "" where neither is told.
func (h header) who(l line) string {
	return strings.TrimSpace(content.Printable(cmp.Or(h.of(l, "name"), h.of(l, "id"))))
}

// readCSV reads a file with names of columns in its first row. A byte-order mark is
// passed over; commas, semicolons and tabs are all taken, as spreadsheets write them.
func readCSV(file string, text []byte, most int) (head header, rows []line, err error) {
	head, err = eachRow(file, text, most, func(_ header, l line) error {
		rows = append(rows, line{l.row, slices.Clone(l.cells)})
		return nil
	})
	return head, rows, err
}

// eachRow is readCSV for what needs one row at a time. The cells are only lent.
func eachRow(file string, text []byte, most int, do func(header, line) error) (header, error) {
	text, err := unmarked(file, text)
	if err != nil {
		return header{}, err
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.FieldsPerRecord = -1
	r.LazyQuotes = true // 0.05" has an inch mark
	r.Comma = separator(text)
	r.TrimLeadingSpace = r.Comma != '\t' // else an empty cell would be taken for space and the rest move up
	head, err := readHeader(file, r)
	if err != nil {
		return head, err
	}
	r.ReuseRecord = true
	for rows := 0; ; {
		cells, number, err := readRow(file, r)
		if errors.Is(err, io.EOF) {
			return head, nil
		}
		if err != nil {
			return head, err
		}
		if cells = withoutEmpty(cells, len(head.names)); cells == nil {
			continue
		}
		if len(cells) > len(head.names) {
			return head, rowError(file, number, "%d cells where there are %d columns", len(cells), len(head.names))
		}
		if rows++; rows > most {
			return head, fmt.Errorf("%s has more than %d rows: give that many at most", file, most)
		}
		if err := do(head, line{number, cells}); err != nil {
			return head, err
		}
	}
}

// longestRow is the longest row of a table that is read, in bytes. A class's widest has a
// few thousand.
const longestRow = 64 << 10

// unmarked is a text without its byte-order mark; an error where its letters would be lost, or
// a row is too long.
func unmarked(file string, text []byte) ([]byte, error) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	switch {
	case bytes.HasPrefix(text, []byte{0xff, 0xfe}), bytes.HasPrefix(text, []byte{0xfe, 0xff}):
		return nil, fmt.Errorf("%s is written in UTF-16: save it as CSV in UTF-8", file)
	case !utf8.Valid(text):
		return nil, fmt.Errorf("%s is not written in UTF-8, so its letters would be lost: save it as CSV UTF-8", file)
	}
	row := 0
	for line := range bytes.Lines(text) {
		if row++; len(line) > longestRow {
			return nil, rowError(file, row, "it has more than %d bytes: is it a table?", longestRow)
		}
	}
	return text, nil
}

// readHeader reads the names of the columns; no name may stand twice.
func readHeader(file string, r *csv.Reader) (header, error) {
	h := header{at: map[string]int{}, comma: r.Comma == ';'}
	cells, _, err := readRow(file, r)
	if errors.Is(err, io.EOF) {
		return h, fmt.Errorf("%s is empty: its first row has the names of the columns", file)
	}
	if err != nil {
		return h, err
	}
	h.names = cells
	for i, c := range cells {
		key := columnKey(c)
		if _, twice := h.at[key]; twice && key != "" {
			return h, fmt.Errorf("%s: the column %s stands twice", file, calc.Quoted(c))
		}
		h.at[key] = i
	}
	return h, nil
}

// columnKey is the name of a column as it is looked for.
func columnKey(name string) string {
	return strings.ToLower(strings.TrimSpace(content.Printable(name)))
}

// readRow reads one row and its number in the file; io.EOF where there is no more.
func readRow(file string, r *csv.Reader) (cells []string, number int, err error) {
	cells, err = r.Read()
	if errors.Is(err, io.EOF) {
		return nil, 0, io.EOF
	}
	if err != nil {
		return nil, 0, fmt.Errorf("%s: %w", file, err)
	}
	number, _ = r.FieldPos(0)
	for _, c := range cells { // a quote that is never closed would take the rows below with it
		if strings.Contains(c, "\n") {
			return nil, 0, fmt.Errorf("%s, row %d: %s has a line break in it; is a quotation mark not closed?", file, number, calc.Quoted(c))
		}
	}
	return cells, number, nil
}

// withoutEmpty is a row without the empty cells that spreadsheets leave beyond the
// columns; nil for the empty rows that they leave at the end.
func withoutEmpty(cells []string, columns int) []string {
	if strings.TrimSpace(strings.Join(cells, "")) == "" {
		return nil
	}
	for len(cells) > columns && strings.TrimSpace(cells[len(cells)-1]) == "" {
		cells = cells[:len(cells)-1]
	}
	return cells
}

// separator is what stands most often in the first line.
func separator(text []byte) rune {
	first, _, _ := bytes.Cut(text, []byte("\n"))
	best, most := ',', 0
	for _, r := range []rune{',', ';', '\t'} {
		if n := bytes.Count(first, []byte(string(r))); n > most {
			best, most = r, n
		}
	}
	return best
}
