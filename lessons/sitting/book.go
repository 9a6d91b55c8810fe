package sitting

import (
	"time"

	"scratchpass/content"
	"scratchpass/lessons/record"
	"scratchpass/quiz/problem"
)

// Book keeps answers, places, tests and rehearsals, and knows what the answers to each task
// come to. To keep one answer, test or rehearsal twice keeps it once.
type Book interface {
	Keep(a record.Answer) error
	Place(lesson string) (part int, ok bool, err error)
	SetPlace(lesson string, part int) error
	Places() ([]record.Left, error)
	AddTest(t record.Test) error
	LastTest() (t record.Test, ok bool, err error)
	BeginRehearsal(b record.Begun) error
	FinishRehearsal(x record.Rehearsal) error
	Rehearsals() ([]record.Rehearsal, error)         // brought to their end, the oldest first
	BegunRehearsals() ([]record.Begun, error)        // and not, the latest first
	Situations(task string, n int) ([]string, error) // of the last answers, the latest first
	Summaries() (of map[string]record.Summary, answers int, err error)
}

// keep writes an answer into the book. at is when it was given: whoever is stopped before
// they know that it is kept, and keeps it again, keeps the same one.
func (st *Sitting) keep(p *problem.Problem, a Answered, given string, at time.Time, took time.Duration) error {
	if st.Book == nil {
		return nil
	}
	return st.Once(func() error { return st.Book.Keep(st.entry(p, a, given, at, took)) })
}

// entry is an answer as the book has it.
func (st *Sitting) entry(p *problem.Problem, a Answered, given string, at time.Time, took time.Duration) record.Answer {
	const longest = 10 * time.Minute // someone was called away: that is no time on the task
	return record.Answer{
		At: at, Task: a.Task, Code: a.Code, Given: content.Printable(shortened(given)), Verdict: a.Mark.Verdict, Slip: a.Mark.Error,
		Points: a.Mark.Points, Certainty: a.Certainty, Hint: a.Hint, Seconds: min(took, longest).Round(100 * time.Millisecond).Seconds(),
		Situation: p.Values.Situation(), Key: p.Expected.Text(), Content: st.Library.Version(a.Task),
	}
}

// shortened cuts what was typed to a length worth keeping.
func shortened(text string) string {
	if runes := []rune(text); len(runes) > 200 {
		return string(runes[:200])
	}
	return text
}
