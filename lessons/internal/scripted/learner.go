package scripted

import (
	"testing"

	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// Learner is a face that answers problems; how it answers the one at hand is a strategy.
// Questions that are no problem get Enter, menus their first line.
type Learner struct {
	Face
	Session  *sitting.Session
	Problem  *problem.Problem // the one at hand; nil between problems
	Posed    []*problem.Problem
	Tries    int // replies to the problem at hand
	Strategy func(l *Learner) string

	t testing.TB
}

// NewLearner returns a learner with a session over the shipped words.
func NewLearner(t testing.TB, seed uint64, system machine.System, strategy func(l *Learner) string) *Learner {
	t.Helper()
	l := &Learner{Strategy: strategy, t: t}
	stream := uint64(0)
	seeds := func() sitting.Seeds { // as --seed does
		stream++
		return sitting.Seeds{Seed: seed, Stream: stream - 1, Short: true}
	}
	s, err := sitting.NewSession(l, content.Shipped(), system, machine.DefaultLathe(system), seeds)
	if err != nil {
		t.Fatal(err)
	}
	l.Session = s
	l.Answer = l.reply
	return l
}

// Show keeps a page, and knows the problem that it asks. A page that is shown again asks
// nothing new.
func (l *Learner) Show(p page.Page) error {
	for _, b := range p {
		q, ok := b.(page.Question)
		if !ok || isExample(p) || l.Problem != nil && l.Problem.Code.String() == q.Code {
			continue
		}
		asked, err := (tasks.Set{}).FromCode(q.Code)
		if err != nil {
			l.t.Fatal(err)
		}
		l.Problem, l.Tries, l.Posed = asked, 0, append(l.Posed, asked)
	}
	return l.Face.Show(p)
}

// isExample reports whether a page shows a problem with its answer.
func isExample(p page.Page) bool {
	for _, b := range p {
		if _, ok := b.(page.Verdict); ok {
			return true
		}
	}
	return false
}

func (l *Learner) reply(q page.Prompt) (string, error) {
	if l.Problem == nil {
		if len(q.Options()) > 0 {
			return "1", nil
		}
		return "", nil
	}
	reply := l.Strategy(l)
	l.Tries++
	if l.Problem.Mark(reply).Verdict != answer.Unread {
		l.Problem = nil
	}
	return reply, nil
}

// Asked is how many problems were posed so far.
func (l *Learner) Asked() int { return len(l.Posed) }

// Key is the right answer as a learner would type it.
func (l *Learner) Key() string { return Typed(l.Problem, l.Problem.Expected.Key) }

// Typed is a response as a learner would type it.
func Typed(p *problem.Problem, r answer.Response) string {
	return p.Expected.Join(p.Expected.Kind.Print(&p.Expected, r), " ")
}

// Error is what the n-th common error of the problem gives.
func (l *Learner) Error(n int) string {
	all := l.Problem.Expected.Errors
	return Typed(l.Problem, all[n%len(all)].Response)
}

// Varied mostly answers right, and sometimes makes a common error, asks for a hint, types
// nonsense or a number that fits nothing.
func Varied(l *Learner) string {
	switch {
	case l.Asked()%7 == 3 && l.Tries == 0:
		return "hint"
	case l.Asked()%11 == 5 && l.Tries == 0:
		return "five"
	case l.Asked()%5 == 2:
		return l.Error(l.Asked())
	case l.Asked()%13 == 9 && l.Problem.Expected.Kind == answer.Quantity:
		return "0.7777"
	}
	return l.Key()
}
