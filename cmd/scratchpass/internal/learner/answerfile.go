package learner

import (
	"bytes"
	"encoding/json"
	"os"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/files"
	"scratchpass/quiz/set"
)

// answeredIn are the answers in a file, the first to each problem, by its code.
func answeredIn(file string) map[string]string {
	given := map[string]string{}
	text, err := os.ReadFile(file)
	if err != nil {
		return given // nothing is there yet
	}
	for line := range bytes.Lines(text) {
		var kept set.Kept
		if json.Unmarshal(line, &kept) != nil || kept.Code == "" {
			continue
		}
		if _, twice := given[kept.Code]; !twice {
			given[kept.Code] = kept.Given
		}
	}
	return given
}

// alsoWrite lets a session write every answer to a file too, at once.
func alsoWrite(r *cli.Run, s *sitting.Session, path string) error {
	f, err := files.Append(path, files.TornAnswer)
	if err != nil {
		return err
	}
	r.AtEnd(f.Close)
	s.Book = answerFile{s.Book, f}
	return nil
}

// answerFile writes answers to a file besides the book they go to.
type answerFile struct {
	sitting.Book // nil where no record is kept
	f            *os.File
}

func (b answerFile) Keep(a record.Answer) error {
	line, err := json.Marshal(set.Kept{Code: a.Code, Given: a.Given, Certainty: a.Certainty, Hint: a.Hint, Seconds: a.Seconds})
	if err != nil {
		return err
	}
	if _, err := b.f.Write(append(line, '\n')); err != nil {
		return err
	}
	if err := b.f.Sync(); err != nil || b.Book == nil {
		return err
	}
	return b.Book.Keep(a)
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
