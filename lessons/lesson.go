package lessons

import (
	"fmt"
	"strings"

	"scratchpass/content"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/figures"
	"scratchpass/quiz/problem"
)

// Lesson runs a lesson from its goals to its mixed check.
func (s *Session) Lesson(name string) error {
	lesson, err := s.Library.Lesson(name)
	if err != nil {
		return err
	}
	first, err := s.leftOff(lesson)
	if err != nil {
		return err
	}
	skip := false
	if first < 0 {
		if err := s.opening(lesson); err != nil {
			return err
		}
		if skip, err = s.preCheck(lesson); err != nil {
			return err
		}
	}
	for i, part := range lesson.Parts {
		if i < first {
			continue
		}
		if err := s.remember(lesson, i); err != nil {
			return err
		}
		if err := s.part(part, s.say("say-part", "part", i+1, "of", len(lesson.Parts)), skip); err != nil {
			return err
		}
	}
	if err := s.check(lesson); err != nil {
		return err
	}
	return s.remember(lesson, -1)
}

// leftOff returns the part to begin with: where the learner left off, if that is
// wanted, and below 0 for the beginning.
func (s *Session) leftOff(l content.Lesson) (int, error) {
	if s.Book == nil {
		return -1, nil
	}
	part, ok, err := s.Book.Place(l.Name)
	if err != nil || !ok || part < 0 || part >= len(l.Parts) {
		return -1, err
	}
	i, err := s.choose(Question{
		Prompt:  s.say("say-left-off", "part", part+1, "of", len(l.Parts), "title", l.Parts[part].Title),
		Options: []string{s.say("say-go-on-there"), s.say("say-from-start")},
	})
	if err != nil || i == 1 {
		return -1, err
	}
	return part, nil
}

// remember keeps where in a lesson the learner is; below 0 that it is finished.
func (s *Session) remember(l content.Lesson, part int) error {
	if s.Book == nil {
		return nil
	}
	return s.Book.SetPlace(l.Name, part)
}

// opening says what the lesson is for, and the cautions that belong to it.
func (s *Session) opening(l content.Lesson) error {
	text := Text{
		{Heading, l.Title},
		{Faint, s.say("say-minutes", "minutes", l.Minutes)},
		{Plain, "\n" + l.Why},
		{Plain, s.say("say-goals")},
	}
	for _, g := range l.Goals {
		text = append(text, Block{Plain, "- " + g})
	}
	for _, key := range l.Cautions {
		text = append(text, s.caution(key))
	}
	text = append(text, Block{Plain, "\n" + s.say("say-words")})
	if err := s.Terminal.Show(text); err != nil {
		return err
	}
	return s.goOn("say-begin")
}

func (s *Session) caution(key string) Block {
	return Block{Caution, s.say("say-caution", "text", s.safety[key].Text)}
}

// preCheck asks two problems. Who has both right may skip the worked examples:
// they help those who don't know it yet and hold up those who do.
func (s *Session) preCheck(l content.Lesson) (skip bool, err error) {
	if err := s.show(Plain, s.say("say-precheck")); err != nil {
		return false, err
	}
	names := partTasks(l)
	got := 0
	for i := range 2 {
		p, w, err := s.problem(names[i*(len(names)-1)], problem.NumbersGiven)
		if err != nil {
			return false, err
		}
		a, err := s.pose(p, w, how{place: s.say("say-first-try", "i", i+1)})
		if err != nil {
			return false, err
		}
		if a.Mark.Correct() && !a.Hint {
			got++
		}
	}
	if got < 2 {
		return false, s.show(Plain, s.say("say-precheck-learn", "right", got))
	}
	reply, err := s.Terminal.Choose(Question{Prompt: s.say("say-precheck-skip"), Options: []string{s.say("say-yes"), s.say("say-no")}})
	return reply == "1", err
}

// partTasks are the tasks of a lesson's parts, in order.
func partTasks(l content.Lesson) []string {
	var names []string
	for _, p := range l.Parts {
		names = append(names, p.Task)
	}
	return names
}

func levelOf(n int) problem.Level { return problem.Level(max(1, min(n, 3))) }

// part explains one thing, shows it worked, fades the help and asks it whole.
func (s *Session) part(part content.Part, place string, skip bool) error {
	text := Text{{Heading, place + ". " + part.Title}}
	for _, b := range part.Explain {
		blocks, err := s.explain(b)
		if err != nil {
			return err
		}
		text = append(text, blocks...)
	}
	if err := s.Terminal.Show(text); err != nil {
		return err
	}
	level := levelOf(part.Level)
	if !skip {
		if err := s.goOn("say-to-examples"); err != nil {
			return err
		}
		if err := s.examplesAndFading(part.Task, level); err != nil {
			return err
		}
	}
	whole := max(part.Whole, 1)
	for i := range whole {
		p, w, err := s.problem(part.Task, level)
		if err != nil {
			return err
		}
		if _, err := s.pose(p, w, how{place: s.say("say-problem", "i", i+1, "of", whole)}); err != nil {
			return err
		}
	}
	return nil
}

// explain turns one block of a lesson into text.
func (s *Session) explain(b content.Block) (Text, error) {
	switch {
	case b.Drawing != "":
		d, err := drawing.Named(b.Drawing, s.drawings)
		if err != nil {
			return nil, err
		}
		return Text{{Plain, ""}, {Picture, strings.Join(d.Terminal(drawingWidth), "\n")}, {Faint, s.say("say-drawing", "title", d.Title)},
			{Plain, d.Twin + "\n"}}, nil
	case b.Caution != "":
		return Text{s.caution(b.Caution)}, nil
	}
	text, err := figures.Fill(b.Text)
	return Text{{Plain, text}}, err
}

// drawingWidth suits the narrowest window the program is laid out for.
const drawingWidth = 38

// check asks mixed problems without a word in between and tells at the end.
func (s *Session) check(l content.Lesson) error {
	if err := s.Terminal.Show(Text{{Heading, s.say("say-check")}, {Plain, s.say("say-check-rules", "n", len(l.Check.Tasks))}}); err != nil {
		return err
	}
	got, err := s.askAllThenTell(len(l.Check.Tasks), s.oneOfEach(l.Check.Tasks, levelOf(l.Check.Level)), nil)
	if err != nil {
		return err
	}
	closing := "say-check-again"
	if got == len(l.Check.Tasks) {
		closing = "say-check-passed"
	}
	return s.Terminal.Show(Text{
		{Heading, s.say("say-check-result", "right", got, "of", len(l.Check.Tasks))},
		{Plain, s.say(closing, "lesson", l.Name)},
		{Caution, s.say("rehearsal")},
	})
}

// Done says what a session came to, for the line at the end.
func (s *Session) Done() string {
	if len(s.Answers) == 0 {
		return s.say("say-done-none")
	}
	return s.say("say-done", "n", len(s.Answers), "right", right(s.Answers))
}

// Title returns the title of a lesson for a menu, with its length.
func Title(l content.Lesson) string { return fmt.Sprintf("%s (%d min)", l.Title, l.Minutes) }

// Goodbye is the line for someone who stopped.
func (s *Session) Goodbye() string {
	if s.describing {
		return s.say("say-stopped-lathe")
	}
	if s.rehearsing {
		return s.say("bench-stopped")
	}
	if s.handed > 0 { // what came of them is told at the end, not before
		return s.say("handed-stopped", "n", s.given+len(s.Answers), "of", s.handed)
	}
	return s.say("say-stopped", "done", s.Done())
}

// LatheKept says where a described lathe was kept.
func (s *Session) LatheKept(where string) string { return s.say("lathe-kept", "where", where) }

// RecordSetAside says that a damaged record was set aside.
func (s *Session) RecordSetAside(where string) string { return s.say("say-set-aside", "where", where) }

// Say words a phrase for a page outside a session.
func (s *Session) Say(phrase string, pairs ...any) string { return s.say(phrase, pairs...) }
