package record

import (
	"encoding/json"
	"errors"
	"io"
	"maps"
	"os"
	"slices"
)

// encoder writes answers as JSON lines.
func encoder(w io.Writer) *json.Encoder {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e
}

// Export writes the learner's answers as JSON lines, oldest first, and returns how many
// it wrote.
func (r *Record) Export(w io.Writer) (n int, err error) {
	e := encoder(w)
	for a, err := range r.Answers() {
		if err != nil {
			return n, err
		}
		if err := e.Encode(a); err != nil {
			return n, err
		}
		n++
	}
	return n, nil
}

// ExportDamaged writes what can be read of a record that is damaged and can't be mended, as
// Export does, and what the copy of an earlier day has besides. It returns how many
// answers it wrote, and the numbers of those that are missing as far as they are known.
func ExportDamaged(path, learner string, w io.Writer) (n int, missing []int64, err error) {
	work, err := os.MkdirTemp("", workFolder+"*") // beside the record nothing may be written
	if err != nil {
		return 0, nil, err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(work)) }()
	found, _, err := salvageBoth(path, work, learner)
	if err != nil {
		return 0, nil, err
	}
	e := encoder(w)
	for _, number := range slices.Sorted(maps.Keys(found.answers[learner])) {
		if err := e.Encode(found.answers[learner][number].Answer); err != nil {
			return n, nil, err
		}
		n++
	}
	return n, found.gaps(learner), nil
}
