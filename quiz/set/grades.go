package set

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
)

// GradesCSV writes one grade a person, for a learning system's book of grades. There is none
// while answers wait, and none where no sheet came.
type GradesCSV struct{ w *csv.Writer }

// NewGradesCSV begins the file.
func NewGradesCSV(w io.Writer) (*GradesCSV, error) {
	c := csv.NewWriter(w)
	return &GradesCSV{c}, c.Write([]string{"id", "name", "grade"})
}

// Add writes one person.
func (g *GradesCSV) Add(r Result) error {
	return g.w.Write([]string{Safe(r.ID), Safe(r.Name), r.grade()})
}

// grade is the sum of points where it is final, else nothing.
func (r Result) grade() string {
	if !r.Handed || r.Open > 0 {
		return ""
	}
	return points(r.Points)
}

// Close ends the file.
func (g *GradesCSV) Close() error {
	g.w.Flush()
	return g.w.Error()
}

// resultColumns are those of results.csv in OneRoster 1.2, in its order. Source: 1EdTech,
// OneRoster CSV Binding 1.2.1, the table of results.csv.
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
