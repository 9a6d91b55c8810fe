package lessons

import (
	"time"

	"scratchpass/content"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// Book keeps answers and places. The record of a learner is one.
type Book interface {
	Keep(a record.Answer) error
	Place(lesson string) (part int, ok bool, err error)
	SetPlace(lesson string, part int) error
}

// recordBook is a book in a learner's record.
type recordBook struct {
	*record.Record
	fold record.Fold
}

var _ Book = recordBook{}

// NewBook returns the book of a record. A record from before there were summaries
// gets them now.
func NewBook(r *record.Record, system machine.System) (Book, error) {
	b := recordBook{r, schedule.Fold(Catalogue(system))}
	old, err := r.NeedsRefold()
	if err == nil && old {
		err = r.Refold(b.fold)
	}
	return b, err
}

func (b recordBook) Keep(a record.Answer) error { return b.Append(a, b.fold) }

// keep writes an answer into the book.
func (s *Session) keep(p *problem.Problem, a Answered, given string, took time.Duration) error {
	if s.Book == nil {
		return nil
	}
	const longest = 10 * time.Minute // someone was called away: that is no time on the task
	return s.Book.Keep(record.Answer{
		At: s.Now(), Task: a.Task, Code: a.Code, Given: content.Printable(shortened(given)), Verdict: a.Mark.Verdict, Slip: a.Mark.Error,
		Points: a.Mark.Points, Certainty: a.Certainty, Hint: a.Hint, Seconds: min(took, longest).Round(100 * time.Millisecond).Seconds(),
		Situation: p.Values.Situation(), Key: p.Expected.Text(), Content: s.Library.Version(a.Task),
	})
}

// shortened cuts what was typed to a length worth keeping.
func shortened(text string) string {
	if runes := []rune(text); len(runes) > 200 {
		return string(runes[:200])
	}
	return text
}
