package set

import (
	"errors"
	"fmt"
)

// mostErrors is how many errors of one file are told.
const mostErrors = 20

// faults gathers what is wrong: the first few, each once, and of the rest how many there are.
// A million of them cost no more memory than a few.
type faults struct {
	first []error
	said  map[string]bool
	last  string // of the rest
	more  int
}

func (f *faults) add(err error) {
	text := err.Error()
	switch {
	case f.said[text] || text == f.last: // one row may have the same error at each question
	case len(f.first) < mostErrors:
		if f.said == nil {
			f.said = map[string]bool{}
		}
		f.first, f.said[text] = append(f.first, err), true
	default:
		f.more, f.last = f.more+1, text
	}
}

// err is nil where nothing is wrong.
func (f *faults) err() error {
	if f.more == 0 {
		return errors.Join(f.first...)
	}
	return errors.Join(append(f.first[:len(f.first):len(f.first)], fmt.Errorf("and %d more", f.more))...)
}
