package lessons

import (
	"scratchpass/quiz"
	"scratchpass/quiz/tasks"
)

// HandedOut asks the problems of codes that an instructor has handed out, in their
// order, without hints, and tells what came of them at the end.
func (s *Session) HandedOut(codes []string) error {
	problems := make([]*quiz.Problem, len(codes))
	for i, code := range codes { // all of them first: a bad code is said before the first question
		p, err := tasks.Remake(code)
		if err != nil {
			return err
		}
		problems[i] = p
	}
	s.certain, s.strict = true, true
	defer func() { s.strict = false }()
	if err := s.Terminal.Show(Text{{Heading, s.say("handed-title")}, {Plain, s.say("handed-rules", "n", len(codes))}}); err != nil {
		return err
	}
	got, err := s.askAllThenTell(len(codes), func(i int) (*quiz.Problem, *quiz.Words, error) {
		w, err := s.wordsOf(problems[i].Task.Name)
		return problems[i], w, err
	})
	if err != nil {
		return err
	}
	return s.Terminal.Show(Text{{Heading, s.say("say-check-result", "right", got, "of", len(codes))}, {Caution, s.say("rehearsal")}})
}
