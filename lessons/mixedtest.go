package lessons

import (
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// testPass is how many right of a mixed test pass it.
const testPass = 11

// MixedTest asks problems from all tasks that a first thread needs, those that can
// hurt someone first in the draw, without hints, and tells at the end. It returns the
// result.
func (s *Session) MixedTest(items []schedule.Item, special map[string]bool, level problem.Level) (record.Test, error) {
	s.certain, s.strict = true, true
	defer func() { s.strict = false }()
	const n = schedule.MixedTestOf
	if err := s.Terminal.Show(Text{{Heading, s.say("test-title")}, {Plain, s.say("test-rules", "n", n, "pass", testPass)}}); err != nil {
		return record.Test{}, err
	}
	var gate, core []string
	for _, it := range items {
		switch {
		case special[it.Task]:
		case it.SafetyCritical:
			gate = append(gate, it.Task)
		default:
			core = append(core, it.Task)
		}
	}
	names := append(s.shuffled(gate, "")[:min(n/2, len(gate))], s.shuffled(core, "")...)
	names = s.shuffled(names[:min(n, len(names))], "")
	got, err := s.askAllThenTell(len(names), s.oneOfEach(names, level), nil)
	if err != nil {
		return record.Test{}, err
	}
	closing := "test-failed"
	if got >= testPass {
		closing = "test-passed"
	}
	t := record.Test{At: s.Now(), Got: got, Of: len(names)}
	return t, s.Terminal.Show(Text{{Heading, s.say("say-check-result", "right", got, "of", len(names))}, {Plain, s.say(closing)}, {Caution, s.say("rehearsal")}})
}

// oneOfEach gives a fresh problem of each task in turn.
func (s *Session) oneOfEach(names []string, level problem.Level) func(i int) (*problem.Problem, *wording.Words, error) {
	return func(i int) (*problem.Problem, *wording.Words, error) { return s.problem(names[i], level) }
}

// askAllThenTell asks n problems without a word in between, then tells what came of
// them. given are answers of an earlier sitting, by the codes of their problems: those
// are not asked again. It returns how many were right.
func (s *Session) askAllThenTell(n int, next func(i int) (*problem.Problem, *wording.Words, error), given map[string]string) (got int, err error) {
	type posed struct {
		p *problem.Problem
		w *wording.Words
		a Answered
	}
	var all []posed
	for i := range n {
		p, w, err := next(i)
		if err != nil {
			return 0, err
		}
		if reply, ok := given[p.Code.String()]; ok {
			s.given++
			all = append(all, posed{p, w, Answered{Task: p.Task.Name, Code: p.Code.String(), Mark: markOf(p, reply)}})
			continue
		}
		a, err := s.pose(p, w, how{place: s.say("say-problem", "i", i+1, "of", n), quiet: true})
		if err != nil {
			return 0, err
		}
		all = append(all, posed{p, w, a})
	}
	for i, one := range all {
		if one.a.Mark.Correct() {
			got++
		}
		f := one.w.Feedback(one.p, one.a.Mark)
		f.Verdict = s.say("say-problem", "i", i+1, "of", len(all)) + ", " + one.w.Task.Title + ". " + f.Verdict
		if err := s.tell(f, one.a.Mark); err != nil {
			return got, err
		}
		if !one.a.Mark.Correct() && i < len(all)-1 { // one at a time: it is there to be read
			if err := s.goOn("say-next"); err != nil {
				return got, err
			}
		}
	}
	return got, nil
}
