package set

import (
	"encoding/csv"
	"io"
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
