package lessons

import (
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// Handed are the questions that an instructor has handed out.
type Handed struct {
	Codes []string          // of their problems, in their order
	Given map[string]string // what was answered in an earlier sitting, by code
	Sure  bool              // each question asks how sure the learner is, not only those that can hurt
}

// HandedOut asks the questions that have no answer yet, without hints, and tells what came
// of all of them at the end.
func (s *Session) HandedOut(h Handed) error {
	problems := make([]*problem.Problem, len(h.Codes))
	for i, code := range h.Codes { // all of them first: a bad code is said before the first question
		p, err := tasks.FromCode(code)
		if err != nil {
			return err
		}
		problems[i] = p
	}
	s.certain, s.certainOfAll, s.strict = true, h.Sure, true
	s.handed = len(h.Codes)
	defer func() { s.strict = false }()
	if err := s.Terminal.Show(Text{{Heading, s.say("handed-title")}, {Plain, s.say("handed-rules", "n", len(h.Codes))}}); err != nil {
		return err
	}
	got, err := s.askAllThenTell(len(problems), func(i int) (*problem.Problem, *wording.Words, error) {
		w, err := s.wordsOf(problems[i].Task.Name)
		return problems[i], w, err
	}, h.Given)
	if err != nil {
		return err
	}
	return s.Terminal.Show(Text{{Heading, s.say("handed-result", "right", got, "of", len(h.Codes))}, {Caution, s.say("rehearsal")}})
}
