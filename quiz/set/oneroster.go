package set

import (
	"encoding/csv"
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"scratchpass/quiz/files"
)

// rolesFile is what OneRoster 1.2 has the roles in; in 1.1 they stand in users.csv.
const rolesFile = "roles.csv"

// oneRosterRows are the students in the users.csv of OneRoster who are there still.
func oneRosterRows(file string, head header, rows []line, note func(Note)) ([]listed, error) {
	student := func(r line) bool { return strings.EqualFold(head.of(r, "role"), "student") }
	if !head.has("role") {
		students, err := studentRoles(file, note)
		if err != nil {
			return nil, err
		}
		student = func(r line) bool { return students[head.of(r, "sourcedid")] }
	}
	var all []listed
	for _, r := range rows {
		if there(head, r) && student(r) {
			all = append(all, listed{Apprentice{ID: head.of(r, "sourcedid"), Name: head.of(r, "givenname") + " " + head.of(r, "familyname")}, r.row})
		}
	}
	return all, nil
}

// there tells a row that has not been taken back.
func there(head header, r line) bool {
	return !strings.EqualFold(head.of(r, "status"), "tobedeleted") && !strings.EqualFold(head.of(r, "enableduser"), "false")
}

// studentRoles are the ids of users who are students by the roles.csv beside a users.csv.
func studentRoles(users string, note func(Note)) (map[string]bool, error) {
	file := filepath.Join(filepath.Dir(users), rolesFile)
	text, err := files.Read(file, mostRosterBytes)
	if err != nil {
		return nil, fmt.Errorf("%s has no column role, as in OneRoster 1.2: put its roles.csv beside it: %w", users, err)
	}
	head, rows, err := readCSV(file, text, 2*mostApprentices, note)
	if err != nil {
		return nil, err
	}
	if !head.has("usersourcedid", "role") {
		return nil, fmt.Errorf("%s: the columns are %q: the roles.csv of OneRoster has userSourcedId and role", file, strings.Join(head.names, ", "))
	}
	students := map[string]bool{}
	for _, r := range rows {
		if there(head, r) && strings.EqualFold(head.of(r, "role"), "student") {
			students[head.of(r, "usersourcedid")] = true
		}
	}
	return students, nil
}

// resultColumns are those of results.csv in OneRoster 1.2, in its order. Source: 1EdTech,
// OneRoster CSV Binding 1.2, results.csv. Its table could not be had where this was checked; a
// public schema of the binding, written by others, has these names in this order (2026-11-26).
var resultColumns = []string{"sourcedId", "status", "dateLastModified", "lineItemSourcedId", "studentSourcedId", "scoreStatus", "score", "scoreDate",
	"comment", "textScore", "classSourcedId", "inProgress", "incomplete", "late", "missing"}

// OneRosterResults writes marks as the results.csv of OneRoster 1.2, in bulk: status and date
// of change are empty there. The line item is the set; the student is the id of the roster.
type OneRosterResults struct {
	w    *csv.Writer
	set  string
	date string
}

// NewOneRosterResults begins the file. date is the day of the scores, such as 2026-12-01.
func NewOneRosterResults(w io.Writer, set, date string) (*OneRosterResults, error) {
	c := csv.NewWriter(w)
	return &OneRosterResults{c, set, date}, c.Write(resultColumns)
}

// Add writes one person. The id of a result hangs on set and person alone, so another run
// gives the same.
func (o *OneRosterResults) Add(r Result) error {
	status, missing := "fully graded", "false"
	switch {
	case !r.Handed:
		status, missing = "not submitted", "true"
	case r.Open > 0:
		status = "partially graded"
	}
	return o.w.Write([]string{o.set + "." + strings.ToLower(r.Code), "", "", o.set, r.ID, status, r.grade(), o.date, "", "", "", "false", strconv.FormatBool(r.Open > 0), "false", missing})
}

// Close ends the file.
func (o *OneRosterResults) Close() error {
	o.w.Flush()
	return o.w.Error()
}
