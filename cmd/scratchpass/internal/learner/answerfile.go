package learner

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/files"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/set"
)

// What a file of one learner's answers holds at most.
const (
	mostOut   = 4 << 20 // bytes
	mostGiven = 1000    // bytes of an answer: no prompt takes a longer one
)

// answeredIn are the answers in a file, the first to each problem, by its code; none where
// there is no such file. A file that holds anything else is an error: nothing is to be
// written to it. A last line that is torn, as a full disk leaves it, is no answer.
func answeredIn(file string) (map[string]string, error) {
	given := map[string]string{}
	text, err := files.Read(file, mostOut)
	if errors.Is(err, fs.ErrNotExist) {
		return given, nil
	}
	if err != nil {
		return nil, err
	}
	if n := wrongAnswer(text, given); n > 0 {
		return nil, cli.Usagef("--out %q is there already, and its line %d is no answer of a quiz: give another file", file, n)
	}
	return given, nil
}

// wrongAnswer adds the answers of a text to those given, and returns the number of the
// first line that is none; 0 where all are.
func wrongAnswer(text []byte, given map[string]string) int {
	n := 0
	for line := range bytes.Lines(text) {
		n++
		if len(bytes.TrimSpace(line)) == 0 || line[len(line)-1] != '\n' && files.TornAnswer(line) {
			continue
		}
		var kept set.Kept
		if json.Unmarshal(line, &kept) != nil || len(kept.Given) > mostGiven {
			return n
		}
		if _, err := problem.ParseCode(kept.Code); err != nil {
			return n
		}
		if _, twice := given[kept.Code]; !twice {
			given[kept.Code] = kept.Given
		}
	}
	return 0
}

// alsoWrite lets a session write every answer to a file too, at once: one that is new, or that
// answeredIn has read.
func alsoWrite(r *cli.Run, s *sitting.Session, path string) error {
	if err := r.NoteExport(path); err != nil {
		return err
	}
	f, err := files.Append(path, files.TornAnswer)
	if err != nil {
		return err
	}
	r.AtEnd(f.Close)
	s.Book = answerFile{s.Book, s, f}
	return nil
}

// answerFile writes answers to a file besides the book they go to.
type answerFile struct {
	sitting.Book // nil where no record is kept
	session      *sitting.Session
	f            *os.File
}

func (b answerFile) Keep(a record.Answer) error {
	line, err := json.Marshal(set.Kept{Code: a.Code, Given: a.Given, Certainty: a.Certainty, Hint: a.Hint, Seconds: a.Seconds})
	if err != nil {
		return err
	}
	if err := b.session.Patiently(a.Given, func() error { return b.add(append(line, '\n')) }); err != nil || b.Book == nil {
		return err
	}
	if err := b.Book.Keep(a); err != nil {
		return fmt.Errorf("%w; it stands in %s all the same", err, b.f.Name())
	}
	return nil
}

// add adds a line, whole or not at all.
func (b answerFile) add(line []byte) error {
	before, err := b.f.Stat()
	if err != nil {
		return err
	}
	if _, err = b.f.Write(line); err == nil {
		err = b.f.Sync()
	}
	if err != nil { // half of it may be there, such as fitted on the disk
		err = errors.Join(err, b.f.Truncate(before.Size()))
	}
	return err
}

func (b answerFile) Place(lesson string) (part int, ok bool, err error) {
	if b.Book == nil {
		return 0, false, nil
	}
	return b.Book.Place(lesson)
}

func (b answerFile) SetPlace(lesson string, part int) error {
	if b.Book == nil {
		return nil
	}
	return b.Book.SetPlace(lesson, part)
}

func (b answerFile) Places() ([]record.Left, error) {
	if b.Book == nil {
		return nil, nil
	}
	return b.Book.Places()
}

func (b answerFile) LastTest() (t record.Test, ok bool, err error) {
	if b.Book == nil {
		return t, false, nil
	}
	return b.Book.LastTest()
}

func (b answerFile) Situations(task string, n int) ([]string, error) {
	if b.Book == nil {
		return nil, nil
	}
	return b.Book.Situations(task, n)
}

func (b answerFile) AddTest(t record.Test) error {
	if b.Book == nil {
		return nil
	}
	return b.Book.AddTest(t)
}

func (b answerFile) Summaries() (of map[string]record.Summary, answers int, err error) {
	if b.Book == nil {
		return nil, 0, nil
	}
	return b.Book.Summaries()
}
