package set

import (
	"fmt"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/files"
)

// Apprentice is one line of a roster.
type Apprentice struct {
	ID   string // what the numbers hang on: it must not change between making and marking
	Name string // as printed
	Form string // the letter of a lettered form; empty for an apprentice
}

// The longest roster that is read: apprentices, and bytes of the file.
const (
	mostApprentices = 20_000
	mostRosterBytes = 8 << 20
)

// rowError is what is wrong with one row of a file.
func rowError(file string, row int, format string, args ...any) error {
	return fmt.Errorf("%s, row %d: "+format, append([]any{file, row}, args...)...)
}

// ReadRoster reads a roster: a table with the columns id and name (or name alone), the
// participants of a learning system (first name, last name, ID number), or the users.csv of
// OneRoster. Everything that is wrong comes at once, with its rows.
func ReadRoster(path string, note func(Note)) ([]Apprentice, error) {
	text, err := files.Read(path, mostRosterBytes)
	if err != nil {
		return nil, err
	}
	return parseRoster(path, text, note)
}

// parseRoster is ReadRoster for a text.
func parseRoster(file string, text []byte, note func(Note)) ([]Apprentice, error) {
	head, rows, err := readCSV(file, text, mostApprentices, note)
	if err != nil {
		return nil, err
	}
	rows = slices.DeleteFunc(rows, func(r line) bool {
		totals := isTotals(strings.Join(r.cells[:1], "")) || head.has("name") && head.of(r, "id") == "" && isTotals(head.of(r, "name"))
		if totals && note != nil {
			note(Note{Says: "set-note-totals", File: file, Row: r.row, Text: strings.TrimSpace(strings.Join(r.cells, " "))})
		}
		return totals
	})
	columns := calc.Quoted(strings.Join(head.names, ", "))
	var all []listed
	none := "no apprentices below the names of the columns"
	switch {
	case head.has("sourcedid", "givenname", "familyname"):
		all, err = oneRosterRows(file, head, rows, note)
		none = "no row has the role student"
	case head.has("first name", "last name"):
		all, err = participantRows(file, head, rows)
	case head.has("name"):
		all = rosterRows(head, rows)
	case head.has("sourcedid"):
		return nil, fmt.Errorf("%s: the columns are %s: the users.csv of OneRoster has sourcedId, givenName and familyName", file, columns)
	default:
		return nil, fmt.Errorf("%s: the columns are %s: give id and name, or first name, last name and ID number, or the users.csv of OneRoster", file, columns)
	}
	if err != nil {
		return nil, err
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("%s: %s", file, none)
	}
	return checkRoster(file, all)
}

// listed is an apprentice and the row they stand in.
type listed struct {
	Apprentice
	row int
}

// rosterRows are the rows of a roster of ids and names, or of names alone.
func rosterRows(head header, rows []line) []listed {
	all := make([]listed, len(rows))
	for i, r := range rows {
		all[i] = listed{Apprentice{ID: head.of(r, "id"), Name: head.of(r, "name")}, r.row}
		if !head.has("id") {
			all[i].ID = all[i].Name
		}
	}
	return all
}

// idColumns have the id of a participant, the first one that is there.
var idColumns = []string{"id number", "id", "username", "email address"}

// participantRows are the rows of a learning system's list of participants. Numbers hang on
// the id, so one column has it in all rows.
func participantRows(file string, head header, rows []line) ([]listed, error) {
	i := slices.IndexFunc(idColumns, func(c string) bool { return head.has(c) })
	if i < 0 {
		return nil, fmt.Errorf("%s: the columns are %s: beside first name and last name give an ID number, id, username or email address",
			file, calc.Quoted(strings.Join(head.names, ", ")))
	}
	all := make([]listed, len(rows))
	for n, r := range rows {
		all[n] = listed{Apprentice{ID: head.of(r, idColumns[i]), Name: head.of(r, "first name") + " " + head.of(r, "last name")}, r.row}
	}
	return all, nil
}

// checkRoster cleans ids and names and says what is wrong with them: each apprentice has
// an id of their own.
func checkRoster(file string, rows []listed) ([]Apprentice, error) {
	all := make([]Apprentice, len(rows))
	var wrong, twice faults
	seen := map[string]int{}
	for i, r := range rows {
		a := r.Apprentice
		a.ID, a.Name = strings.TrimSpace(content.Printable(a.ID)), strings.TrimSpace(content.Printable(a.Name))
		all[i] = a
		switch {
		case a.ID == "":
			wrong.add(rowError(file, r.row, "no id: each apprentice wants one of their own"))
			continue
		case len([]rune(a.ID)) > 80 || len([]rune(a.Name)) > 120:
			wrong.add(rowError(file, r.row, "an id may have 80 letters, a name 120"))
		}
		key := strings.ToLower(a.ID)
		if first, ok := seen[key]; ok {
			twice.add(rowError(file, r.row, "%s stands in row %d already; two apprentices want two ids", calc.Quoted(a.ID), first))
			continue
		}
		seen[key] = r.row
	}
	for _, err := range twice.first {
		wrong.add(err)
	}
	wrong.more += twice.more
	return all, wrong.err()
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
