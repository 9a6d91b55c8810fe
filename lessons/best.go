package lessons

import (
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/problem"
)

// bestMinutes is how long a session of what is best to practise lasts at most.
const bestMinutes = 12

// Best practises what the record says is best now, and says why each comes.
// summaries returns what the record holds, anew after every answer.
func (s *Session) Best(items []schedule.Item, summaries func() (map[string]record.Summary, error), level problem.Level) error {
	s.certain = true
	if err := s.Terminal.Show(Text{{Heading, s.say("say-best", "minutes", bestMinutes)}, {Plain, s.say("say-words")}}); err != nil {
		return err
	}
	var recent []string
	for minutes := 0.0; ; {
		of, err := summaries()
		if err != nil {
			return err
		}
		c, ok := schedule.Next(items, of, recent, s.Now())
		if minutes += c.Item.Minutes; !ok || minutes > bestMinutes {
			break
		}
		recent = append(recent, c.Item.Task)
		if of[c.Item.Task].Stuck() {
			if err := s.helpStuck(c.Item.Task, level); err != nil {
				return err
			}
		}
		s.wants = func(p *problem.Problem) bool { return c.Item.Wants(of[c.Item.Task], p) }
		p, w, err := s.problem(c.Item.Task, level)
		s.wants = nil
		if err != nil {
			return err
		}
		why := s.say("say-why-"+string(c.Reason), "task", w.Task.Title, "run", len(of[c.Item.Task].Run))
		if _, err := s.pose(p, w, how{place: why}); err != nil {
			return err
		}
	}
	return s.Terminal.Show(s.summary())
}

// helpStuck shows a worked example to someone for whom trying again is no help.
func (s *Session) helpStuck(task string, level problem.Level) error {
	if err := s.show(Plain, s.say("say-stuck")); err != nil {
		return err
	}
	p, w, err := s.problem(task, level)
	if err != nil {
		return err
	}
	return s.example(p, w, 1)
}
