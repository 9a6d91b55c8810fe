package sitting_test

import (
	"testing"

	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// exam asks one decision and tells at the end.
type exam struct{}

func (exam) Name() string                     { return "exam" }
func (exam) Farewell(*sitting.Sitting) string { return "" }
func (exam) Run(st *sitting.Sitting) error {
	next := func(int) (*problem.Problem, *wording.Words, error) {
		return st.Problem("when-to-leave-compound", problem.NumbersGiven, nil)
	}
	_, err := st.AskAllThenTell(1, next, sitting.Rules{NoHints: true, AtTheEnd: true})
	return err
}

// In a test a person can take a choice back until Enter keeps it; a file of answers is
// asked once.
func TestAChoiceCanBeTakenBack(t *testing.T) {
	for _, c := range []struct {
		attended bool
		replies  []string
		kept     string
		asked    int
	}{
		{true, []string{"1", ""}, "1", 2},
		{true, []string{"1", "2", ""}, "2", 3},
		{true, []string{"1", "hint", "9999", "3", ""}, "3", 5},
		{true, []string{"2", "pass"}, "", 2},
		{false, []string{"1", "2", ""}, "1", 1},
	} {
		i := 0
		l := scripted.NewLearner(t, 2, machine.Imperial, nil)
		l.Session.Attended = c.attended
		l.Strategy = func(*scripted.Learner) string { i++; return c.replies[i-1] }
		answer := l.Answer
		var p *problem.Problem
		l.Answer = func(q page.Prompt) (string, error) {
			if l.Problem != nil {
				p = l.Problem
			} else if c.attended && i < len(c.replies) { // asked again: the learner takes an answer for the last word
				i++
				return c.replies[i-1], nil
			}
			return answer(q)
		}
		answers, err := l.Session.Run(exam{})
		if err != nil || len(answers) != 1 || i != c.asked {
			t.Fatalf("%q: %v, %v, asked %d times", c.replies, answers, err, i)
		}
		if c.kept == "" {
			if !answers[0].Mark.Passed {
				t.Errorf("%q: %+v", c.replies, answers[0].Mark)
			}
			continue
		}
		if want := sitting.MarkOf(p, c.kept); answers[0].Mark.Verdict != want.Verdict || answers[0].Mark.Error != want.Error {
			t.Errorf("%q: %+v, want %+v", c.replies, answers[0].Mark, want)
		}
	}
}
