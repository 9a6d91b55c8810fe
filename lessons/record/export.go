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

// Exported is how much was written.
type Exported struct {
	Answers, Rehearsals int

	Missing           []int64 // the numbers of answers that are missing, as far as they are known
	MissingRehearsals []int64 // the same of rehearsals
}

// Export writes the learner's answers, then their rehearsals, then the logs that are kept with them as
// JSON lines, oldest first.
func (r *Record) Export(w io.Writer) (x Exported, err error) {
	e := encoder(w)
	for a, err := range r.Answers() {
		if err != nil {
			return x, err
		}
		if err := e.Encode(a); err != nil {
			return x, err
		}
		x.Answers++
	}
	rehearsals, err := r.Rehearsals()
	if err != nil {
		return x, err
	}
	if err := x.encode(e, rehearsals); err != nil {
		return x, err
	}
	logs, err := r.Logs()
	for _, l := range logs {
		for _, part := range l.parts(r.Learner) {
			err = errors.Join(err, e.Encode(part))
		}
	}
	return x, err
}

func (x *Exported) encode(e *json.Encoder, rehearsals []Rehearsal) error {
	for _, one := range rehearsals {
		if err := e.Encode(one); err != nil {
			return err
		}
		x.Rehearsals++
	}
	return nil
}

// ExportDamaged writes what can be read of a record that is damaged and can't be mended, as
// Export does, and what the copy of an earlier day has besides. It tells what is missing.
func ExportDamaged(path, learner string, w io.Writer) (x Exported, err error) {
	work, err := os.MkdirTemp("", workFolder+"*") // beside the record nothing may be written
	if err != nil {
		return x, err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(work)) }()
	found, _, err := salvageBoth(path, work, learner)
	if err != nil {
		return x, err
	}
	e := encoder(w)
	for _, number := range slices.Sorted(maps.Keys(found.answers[learner])) {
		if err := e.Encode(found.answers[learner][number].Answer); err != nil {
			return x, err
		}
		x.Answers++
	}
	if err := x.encode(e, found.rehearsals(learner)); err != nil {
		return x, err
	}
	x.Missing, x.MissingRehearsals = found.gaps(learner), found.rehearsalGaps(learner)
	return x, nil
}
