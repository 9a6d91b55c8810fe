package oneroster

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"scratchpass/calc"
)

// mostRows is how many rows a file may have: a school has some thousand people.
const mostRows = 500_000

// rows are those of a CSV file with names of columns.
type rows struct {
	file    string // as errors call it
	columns []string
	all     []row
}

// row is one of them; the zero row is one that is not there.
type row struct {
	cells []string
	line  int // in the file
	at    map[string]int
}

// of is what stands in a column; empty where there is none.
func (r row) of(column string) string {
	if i, ok := r.at[column]; ok {
		return strings.TrimSpace(r.cells[i])
	}
	return ""
}

// wrong is what is wrong with a row.
func (t rows) wrong(r row, format string, args ...any) error {
	if r.line == 0 { // it is missing
		return fmt.Errorf("%s: "+format, append([]any{t.file}, args...)...)
	}
	return fmt.Errorf("%s, row %d: "+format, append([]any{t.file, r.line}, args...)...)
}

// readRows reads a file that has some columns, and maybe others.
func readRows(file string, text []byte, needed ...string) (rows, error) {
	t := rows{file: file}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if !utf8.Valid(text) {
		return t, fmt.Errorf("%s, row %d: it is not in UTF-8", file, 1+bytes.Count(validPart(text), []byte("\n")))
	}
	c := csv.NewReader(bytes.NewReader(text))
	c.FieldsPerRecord = -1 // a row that is short is told below, with its number
	at := map[string]int{}
	for {
		cells, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return t, fmt.Errorf("%s: it can't be read: %w", file, err)
		}
		line, _ := c.FieldPos(0)
		switch {
		case t.columns == nil:
			t.columns = cells
			for i, name := range cells {
				at[strings.TrimSpace(name)] = i
			}
			if missing := slices.DeleteFunc(needed, func(name string) bool { _, ok := at[name]; return ok }); len(missing) > 0 {
				return t, fmt.Errorf("%s: the columns are %s: %s is missing", file, calc.Quoted(strings.Join(cells, ", ")), strings.Join(missing, ", "))
			}
		case len(cells) != len(t.columns):
			return t, t.wrong(row{line: line}, "it has %d cells, and the names of the columns are %d: %s", len(cells), len(t.columns), calc.Quoted(strings.Join(cells, ",")))
		case len(t.all) == mostRows:
			return t, fmt.Errorf("%s: it has more than %d rows", file, mostRows)
		default:
			t.all = append(t.all, row{cells, line, at})
		}
	}
	if t.columns == nil {
		return t, fmt.Errorf("%s: it is empty: the first row has the names of the columns", file)
	}
	return t, nil
}

// validPart is a text up to where it is no UTF-8.
func validPart(text []byte) []byte {
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRune(text[i:])
		if r == utf8.RuneError && n == 1 {
			return text[:i]
		}
		i += n
	}
	return text
}
