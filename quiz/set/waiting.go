package set

import (
	"encoding/csv"
	"io"
	"strconv"
)

// WaitingCSV lists the answers that wait for the instructor, a row each. With points and a
// reason filled in it is a file of decisions.
type WaitingCSV struct{ w *csv.Writer }

// NewWaitingCSV begins the file.
func NewWaitingCSV(w io.Writer) (*WaitingCSV, error) {
	c := csv.NewWriter(w)
	return &WaitingCSV{c}, c.Write(decisionColumns)
}

// Add takes what waits on one sheet.
func (c *WaitingCSV) Add(r Result) error {
	for _, it := range r.Items {
		if !undecided(it.Verdict) {
			continue
		}
		row := []string{r.Code, strconv.Itoa(it.Number), "", "", Safe(r.Name), Safe(r.ID), it.Task, Safe(it.answers()), it.Probably, Safe(it.Key), points(it.Of), string(it.Verdict)}
		if err := c.w.Write(row); err != nil {
			return err
		}
	}
	return nil
}

// Close ends the file.
func (c *WaitingCSV) Close() error {
	c.w.Flush()
	return c.w.Error()
}
