package set

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"unicode/utf8"

	"scratchpass/calc"
	"scratchpass/content"
)

// Apprentice is one line of a roster.
type Apprentice struct {
	ID   string // what the numbers hang on: it must not change between making and marking
	Name string // as printed
	Form string // the letter of a lettered form; empty for an apprentice
}

// mostApprentices is the longest roster that is read.
const mostApprentices = 20_000

// rowError is what is wrong with one row of a file.
func rowError(file string, row int, format string, args ...any) error {
	return fmt.Errorf("%s, row %d: "+format, append([]any{file, row}, args...)...)
}

// ReadRoster reads a roster: a CSV with the columns id and name (or name alone), or the
// users.csv of OneRoster. Everything that is wrong comes at once, with its rows.
func ReadRoster(path string) ([]Apprentice, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	return ParseRoster(path, text)
}

// ParseRoster is ReadRoster for a text.
func ParseRoster(file string, text []byte) ([]Apprentice, error) {
	head, rows, err := readCSV(file, text, mostApprentices)
	if err != nil {
		return nil, err
	}
	var all []Apprentice
	var at []int // their rows
	var errs []error
	add := func(row int, a Apprentice) {
		a.ID, a.Name = strings.TrimSpace(content.Printable(a.ID)), strings.TrimSpace(content.Printable(a.Name))
		switch {
		case a.ID == "":
			errs = append(errs, rowError(file, row, "no id: each apprentice wants one of their own"))
		case len([]rune(a.ID)) > 80 || len([]rune(a.Name)) > 120:
			errs = append(errs, rowError(file, row, "an id may have 80 letters, a name 120"))
		}
		all, at = append(all, a), append(at, row)
	}
	switch {
	case head.has("sourcedid", "givenname", "familyname", "role"):
		for _, r := range rows {
			if strings.EqualFold(head.of(r, "status"), "tobedeleted") || !strings.EqualFold(head.of(r, "role"), "student") || strings.EqualFold(head.of(r, "enableduser"), "false") {
				continue
			}
			add(r.row, Apprentice{ID: head.of(r, "sourcedid"), Name: head.of(r, "givenname") + " " + head.of(r, "familyname")})
		}
		if len(all) == 0 && len(errs) == 0 {
			return nil, fmt.Errorf("%s: no row has the role student", file)
		}
	case head.has("name"):
		for _, r := range rows {
			a := Apprentice{ID: head.of(r, "id"), Name: head.of(r, "name")}
			if !head.has("id") {
				a.ID = a.Name
			}
			add(r.row, a)
		}
	case head.has("sourcedid"):
		return nil, fmt.Errorf("%s: the columns are %s: the users.csv of OneRoster has sourcedId, givenName, familyName and role", file, calc.Quoted(strings.Join(head.names, ", ")))
	default:
		return nil, fmt.Errorf("%s: the columns are %s: give id and name, or the users.csv of OneRoster", file, calc.Quoted(strings.Join(head.names, ", ")))
	}
	if len(all) == 0 && len(errs) == 0 {
		return nil, fmt.Errorf("%s: no apprentices below the names of the columns", file)
	}
	seen := map[string]int{}
	for i, a := range all {
		key := strings.ToLower(a.ID)
		if first, twice := seen[key]; twice && a.ID != "" {
			errs = append(errs, rowError(file, at[i], "%s stands in row %d already; two apprentices want two ids", calc.Quoted(a.ID), first))
			continue
		}
		seen[key] = at[i]
	}
	return all, firstErrors(errs)
}

// mostErrors is how many errors of one file are told.
const mostErrors = 20

// firstErrors joins errors, each once, but not a million.
func firstErrors(errs []error) error {
	seen := map[string]bool{}
	errs = slices.DeleteFunc(errs, func(err error) bool {
		twice := seen[err.Error()]
		seen[err.Error()] = true
		return twice
	})
	if n := len(errs); n > mostErrors {
		errs = append(slices.Clone(errs[:mostErrors]), fmt.Errorf("and %d more", n-mostErrors))
	}
	return errors.Join(errs...)
}

// Forms are lettered forms instead of apprentices.
func Forms(n int) ([]Apprentice, error) {
	const most = 26
	if n < 1 || n > most {
		return nil, &calc.InputError{What: "forms", Got: fmt.Sprint(n), Want: "1 to 26"}
	}
	all := make([]Apprentice, n)
	for i := range all {
		letter := string(rune('A' + i))
		all[i] = Apprentice{ID: "form " + letter, Form: letter}
	}
	return all, nil
}

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
func readCSV(file string, text []byte, most int) (header, []line, error) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if bytes.HasPrefix(text, []byte{0xff, 0xfe}) || bytes.HasPrefix(text, []byte{0xfe, 0xff}) {
		return header{}, nil, fmt.Errorf("%s is written in UTF-16: save it as CSV in UTF-8", file)
	}
	if !utf8.Valid(text) {
		return header{}, nil, fmt.Errorf("%s is not written in UTF-8, so its letters would be lost: save it as CSV UTF-8", file)
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.FieldsPerRecord = -1
	r.LazyQuotes = true // 0.05" has an inch mark
	r.Comma = separator(text)
	r.TrimLeadingSpace = r.Comma != '\t' // else an empty cell would be taken for space and the rest move up
	h := header{at: map[string]int{}, comma: r.Comma == ';'}
	var rows []line
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return h, nil, fmt.Errorf("%s: %w", file, err)
		}
		number, _ := r.FieldPos(0)
		if h.names == nil {
			if err := h.name(file, number, cells); err != nil {
				return h, nil, err
			}
			continue
		}
		row, err := h.row(file, number, cells)
		if err != nil {
			return h, nil, err
		}
		if row == nil {
			continue
		}
		if rows = append(rows, line{number, row}); len(rows) > most {
			return h, nil, fmt.Errorf("%s has more than %d rows: give that many at most", file, most)
		}
	}
	if h.names == nil {
		return h, nil, fmt.Errorf("%s is empty: its first row has the names of the columns", file)
	}
	return h, rows, nil
}

// name takes the first row for the names of the columns.
func (h *header) name(file string, number int, cells []string) error {
	if err := closed(file, number, cells); err != nil {
		return err
	}
	h.names = cells
	for i, c := range cells {
		key := strings.ToLower(strings.TrimSpace(content.Printable(c)))
		if _, twice := h.at[key]; twice && key != "" {
			return fmt.Errorf("%s: the column %s stands twice", file, calc.Quoted(c))
		}
		h.at[key] = i
	}
	return nil
}

// row is a row below the names; nil for an empty one, as spreadsheets leave them at the
// end.
func (h *header) row(file string, number int, cells []string) ([]string, error) {
	if err := closed(file, number, cells); err != nil {
		return nil, err
	}
	if strings.TrimSpace(strings.Join(cells, "")) == "" {
		return nil, nil
	}
	for len(cells) > len(h.names) && strings.TrimSpace(cells[len(cells)-1]) == "" { // spreadsheets leave such cells too
		cells = cells[:len(cells)-1]
	}
	if len(cells) > len(h.names) {
		return nil, rowError(file, number, "%d cells where there are %d columns", len(cells), len(h.names))
	}
	return cells, nil
}

// closed returns an error where a quotation mark is not: it would take the rows below
// with it.
func closed(file string, number int, cells []string) error {
	for _, c := range cells {
		if strings.Contains(c, "\n") {
			return fmt.Errorf("%s, row %d: %s has a line break in it; is a quotation mark not closed?", file, number, calc.Quoted(c))
		}
	}
	return nil
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
