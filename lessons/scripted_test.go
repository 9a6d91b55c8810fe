package lessons

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

var update = flag.Bool("update", false, "write the golden files anew; read them before committing")

// scripted is a terminal that answers as it is told and keeps all that was said.
type scripted struct {
	answer  func(q Question) (string, error)
	shown   []Text
	replies []string
	log     strings.Builder
}

func (t *scripted) Show(text Text) error {
	t.shown = append(t.shown, text)
	for _, b := range text {
		if b.Style != Picture && b.Text != "" {
			fmt.Fprintln(&t.log, Wrap(b.Text, 78))
		}
	}
	fmt.Fprintln(&t.log)
	return nil
}

func (t *scripted) Ask(q Question) (string, error) {
	if len(t.replies) > 5000 { // an answer that can't be read is asked for again, for ever
		return "", fmt.Errorf("asked 5,000 times, last %q", q.Prompt)
	}
	reply, err := t.answer(q)
	if err == nil {
		t.replies = append(t.replies, reply)
		fmt.Fprintf(&t.log, "%s > %s\n", q.Prompt, reply)
	}
	return reply, err
}

func (t *scripted) Choose(q Question) (string, error) {
	for i, o := range q.Options {
		fmt.Fprintf(&t.log, "%d) %s\n", i+1, o)
	}
	return t.Ask(q)
}

// learner answers problems; how it answers the k-th one is a strategy.
type learner struct {
	*scripted
	session  *Session
	problem  *problem.Problem
	asked    int // problems posed so far
	tries    int // replies to the problem at hand
	strategy func(l *learner) string
}

// newLearner returns a session over the shipped words with a learner who answers
// by a strategy. Questions that are no problem get Enter, menus their first line.
func newLearner(t *testing.T, seed uint64, system machine.System, strategy func(l *learner) string) *learner {
	t.Helper()
	l := &learner{scripted: &scripted{}, strategy: strategy}
	source := rand.NewPCG(seed, 0) // as --seed does
	seeds := func() uint32 { return uint32(source.Uint64() >> 32 & 0xffff) }
	s, err := NewSession(l, content.Shipped(), system, machine.DefaultLathe(system), seeds)
	if err != nil {
		t.Fatal(err)
	}
	l.session = s
	s.posed = func(p *problem.Problem) { l.problem, l.tries, l.asked = p, 0, l.asked+1 }
	l.answer = func(q Question) (string, error) {
		if l.problem == nil {
			if len(q.Options) > 0 {
				return "1", nil
			}
			return "", nil
		}
		reply := l.strategy(l)
		l.tries++
		if l.problem.Mark(reply).Verdict != answer.Unread {
			l.problem = nil
		}
		return reply, nil
	}
	return l
}

func (l *learner) key() string { return typed(l.problem, l.problem.Expected.Key) }

// typed is a response as a learner would type it.
func typed(p *problem.Problem, r answer.Response) string {
	return p.Expected.Join(p.Expected.Kind.Print(&p.Expected, r), " ")
}

// slip answers with the n-th slip of the problem.
func (l *learner) slip(n int) string {
	var all []string
	for _, known := range l.problem.Expected.Errors {
		all = append(all, typed(l.problem, known.Response))
	}
	return all[n%len(all)]
}

// varied mostly answers right, and sometimes makes a slip, asks for a hint, types
// nonsense or a number that fits nothing.
func varied(l *learner) string {
	switch {
	case l.asked%7 == 3 && l.tries == 0:
		return "hint"
	case l.asked%11 == 5 && l.tries == 0:
		return "five"
	case l.asked%5 == 2:
		return l.slip(l.asked)
	case l.asked%13 == 9 && l.problem.Expected.Kind == answer.Quantity:
		return "0.7777"
	}
	return l.key()
}

// The three lessons from beginning to end, as a learner sees them who is mostly
// right. Read what changed before committing a new golden. The replies are kept
// beside the transcript: the program's own tests pipe them in.
func TestLessonTranscripts(t *testing.T) {
	for _, name := range content.Shipped().LessonNames() {
		for _, system := range []machine.System{machine.Imperial, machine.Metric} {
			t.Run(name+" "+system.String(), func(t *testing.T) {
				l := newLearner(t, 5, system, varied)
				if err := l.session.Lesson(name); err != nil {
					t.Fatal(err)
				}
				if n := len(l.session.Answers); n < 12 {
					t.Errorf("only %d problems were answered", n)
				}
				base := filepath.Join("testdata", name+"-"+system.String())
				golden(t, base+".transcript", l.log.String())
				golden(t, base+".replies", strings.Join(l.replies, "\n")+"\n")
			})
		}
	}
}

func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; run go test ./lessons -update and read the change.\ngot:\n%s", file, got)
	}
}
