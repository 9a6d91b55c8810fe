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
	whole := strings.TrimSpace(h.of(l, "first name") + " " + h.of(l, "last name"))
	return strings.TrimSpace(content.Printable(cmp.Or(h.of(l, "name"), whole, h.theID(l))))
}

// theID is the id in a row, by whichever column has it; "" where none does.
func (h header) theID(l line) string {
	return cmp.Or(h.of(l, "id"), h.of(l, "id number"))
}

// readCSV reads a table with names of columns in its first row: a CSV as spreadsheets write
// it, with commas, semicolons or tabs, in UTF-8, UTF-16 or Windows-1252; or a workbook.
func readCSV(file string, text []byte, most int, note func(Note)) (head header, rows []line, err error) {
	head, err = eachRow(file, text, most, note, func(_ header, l line) error {
		rows = append(rows, line{l.row, slices.Clone(l.cells)})
		return nil
	})
	return head, rows, err
}

// eachRow is readCSV for what needs one row at a time. The cells are only lent.
func eachRow(file string, text []byte, most int, note func(Note), do func(header, line) error) (header, error) {
	if note == nil {
		note = func(Note) {}
	}
	next, comma, err := rowsOf(file, text, most, note)
	if err != nil {
		return header{}, err
	}
	head, err := readHeader(file, next, comma)
	if err != nil {
		return head, err
	}
	for rows := 0; ; {
		r, err := next()
		if errors.Is(err, io.EOF) {
			return head, nil
		}
		if err != nil {
			return head, err
		}
		if r.cells = withoutEmpty(r.cells, len(head.names)); r.cells == nil {
			continue
		}
		if len(r.cells) > len(head.names) {
			return head, rowError(file, r.row, "%d cells where there are %d columns", len(r.cells), len(head.names))
		}
		if rows++; rows > most {
			return head, fmt.Errorf("%s has more than %d rows: give that many at most", file, most)
		}
		if err := do(head, r); err != nil {
			return head, err
		}
	}
}

// rowsOf returns what reads one row after the other, io.EOF at the end, and what parts the
// cells: 0 in a workbook.
func rowsOf(file string, text []byte, most int, note func(Note)) (next func() (line, error), comma rune, err error) {
	if isWorkbook(text) {
		rows, err := workbookRows(file, text, most, note)
		return func() (line, error) {
			if len(rows) == 0 {
				return line{}, io.EOF
			}
			r := rows[0]
			rows = rows[1:]
			return r, nil
		}, 0, err
	}
	text, err = decoded(file, text, note)
	if err != nil {
		return nil, 0, err
	}
	text, comma, skipped := lines(text)
	if err := noLongRow(file, text); err != nil {
		return nil, 0, err
	}
	if comma == 0 {
		comma = separator(text)
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.FieldsPerRecord = -1
	r.LazyQuotes = true // 0.05" has an inch mark
	r.Comma = comma
	r.TrimLeadingSpace = r.Comma != '\t' // else an empty cell would be taken for space and the rest move up
	return func() (line, error) {
		cells, number, err := readRow(file, r)
		r.ReuseRecord = true // the names of the columns are kept
		return line{number + skipped, cells}, err
	}, comma, nil
}

// longestRow is the longest row of a table that is read, in bytes. A class's widest has a
// few thousand.
const longestRow = 64 << 10

// noLongRow is an error where a row is too long.
func noLongRow(file string, text []byte) error {
	row := 0
	for line := range bytes.Lines(text) {
		if row++; len(line) > longestRow {
			return rowError(file, row, "it has more than %d bytes: is it a table?", longestRow)
		}
	}
	return nil
}

// readHeader reads the names of the columns; no name may stand twice.
func readHeader(file string, next func() (line, error), comma rune) (header, error) {
	h := header{at: map[string]int{}, comma: comma == ';'}
	first, err := next()
	if errors.Is(err, io.EOF) {
		return h, fmt.Errorf("%s is empty: its first row has the names of the columns", file)
	}
	if err != nil {
		return h, err
	}
	h.names = first.cells
	for i, c := range h.names {
		key := columnKey(c)
		if _, twice := h.at[key]; twice && key != "" {
			return h, fmt.Errorf("%s: the column %s stands twice", file, calc.Quoted(c))
		}
		h.at[key] = i
	}
	return h, nil
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
