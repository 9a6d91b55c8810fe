package lessons

import (
	"errors"
	"fmt"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// What a timed drill is for: tasks someone already does right without a clock, and
// never one that can hurt. Source: the teaching rules of this project.
const (
	drillShare   = 0.9
	drillAnswers = 5
)

// Drillable returns the tasks of a record that may be drilled against the clock.
func Drillable(items []schedule.Item, of map[string]record.Summary) []string {
	var names []string
	for _, it := range items {
		if s := of[it.Task]; !it.SafetyCritical && s.Answers >= drillAnswers && float64(s.Right) >= drillShare*float64(s.Answers) {
			names = append(names, it.Task)
		}
	}
	return names
}

// NoGate returns an error when a task must not be drilled against the clock.
func NoGate(names []string) error {
	for _, name := range names {
		t, err := tasks.Find(name)
		if err != nil {
			return err
		}
		if t.SafetyCritical {
			return fmt.Errorf("%s can hurt someone at the lathe; what can hurt is never done against the clock", name)
		}
	}
	return nil
}

// wordUntimed turns the clock off.
const wordUntimed = "t"

// round is what came of one round.
type round struct {
	right, asked int
	untimed      bool
}

// Drill asks problems of tasks against the clock: two rounds for one learner, to be
// compared with each other, or one round for each name in turn. A question that is
// up when the time is over may still be answered, and doesn't count.
func (s *Session) Drill(names []string, players []string, length time.Duration, level problem.Level) error {
	solo := len(players) == 0
	if err := s.Terminal.Show(Text{{Heading, s.say("drill-title")}, {Plain, s.say("drill-rules", "seconds", int(length.Seconds()))}}); err != nil {
		return err
	}
	if solo {
		players = []string{s.say("drill-round", "i", 1), s.say("drill-round", "i", 2)}
	}
	var rounds []round
	for _, player := range players {
		if err := s.Terminal.Show(Text{{Heading, player}}); err != nil {
			return err
		}
		if err := s.goOn("drill-start"); err != nil {
			return err
		}
		r, err := s.oneRound(names, length, level)
		rounds = append(rounds, r)
		if err != nil {
			return err
		}
		score := fmt.Sprintf("%d/%d", r.right, r.asked)
		if err := s.Terminal.Show(Text{{Picture, Big(score)}, {Good, s.say("drill-score", "player", player, "right", r.right, "of", r.asked)}}); err != nil {
			return err
		}
	}
	text := Text{{Heading, s.say("drill-end")}}
	for i, r := range rounds {
		line := s.say("drill-score", "player", players[i], "right", r.right, "of", r.asked)
		if r.untimed {
			line += " " + s.say("drill-untimed")
		}
		text = append(text, Block{Plain, "- " + line})
	}
	if solo && len(rounds) == 2 && !rounds[0].untimed && !rounds[1].untimed {
		text = append(text, Block{Plain, s.say("drill-compare", "difference", fmt.Sprintf("%+d", rounds[1].right-rounds[0].right))})
	}
	return s.Terminal.Show(append(text, Block{Caution, s.say("rehearsal")}))
}

// oneRound asks until the time is over, or with the clock off until ten are asked.
func (s *Session) oneRound(names []string, length time.Duration, level problem.Level) (r round, err error) {
	const untimedOf = 10
	began := s.Now()
	queue := []string{}
	var p *problem.Problem // the one that is up; it stays up when the clock goes off
	var w *wording.Words
	for {
		left := length - s.Now().Sub(began)
		if !r.untimed && left <= 0 || r.untimed && r.asked >= untimedOf {
			return r, nil
		}
		if len(queue) == 0 {
			queue = s.shuffled(names, queueEnd(s.Answers))
		}
		if p == nil {
			if p, w, err = s.problem(queue[0], level); err != nil {
				return r, err
			}
			queue = queue[1:]
		}
		place := s.say("drill-left", "seconds", int(left.Seconds()))
		if r.untimed {
			place = s.say("say-problem", "i", r.asked+1, "of", untimedOf)
		}
		off, m, err := s.quick(p, w, place)
		switch {
		case err != nil:
			return r, err
		case off:
			r.untimed = true
			if err := s.show(Plain, s.say("drill-clock-off")); err != nil {
				return r, err
			}
			continue
		case !r.untimed && s.Now().Sub(began) > length:
			return r, s.show(Plain, s.say("drill-over"))
		}
		r.asked++
		if m.Correct() {
			r.right++
		}
		f := w.Feedback(p, m)
		if err := s.Terminal.Show(Text{{map[bool]Style{true: Good, false: Bad}[m.Correct()], f.Verdict}, {Plain, f.Reason}}); err != nil {
			return r, err
		}
		p = nil
	}
}

// quick asks one problem of a drill. off reports that the learner turned the clock
// off instead of answering.
func (s *Session) quick(p *problem.Problem, w *wording.Words, place string) (off bool, m answer.Mark, err error) {
	if s.posed != nil {
		s.posed(p)
	}
	began := s.Now()
	prompt, _ := w.Ask(p)
	if err := s.Terminal.Show(Text{{Faint, place}, {Plain, prompt}}); err != nil {
		return false, m, err
	}
	for {
		reply, err := s.Terminal.Ask(Question{Prompt: w.Expects(p)})
		if err != nil {
			return false, m, err
		}
		if word, _ := asked(reply, []string{wordUntimed, WordStop}); word == WordStop {
			return false, m, ErrStopped
		} else if word == wordUntimed {
			return true, m, nil
		}
		if m = p.Mark(reply); m.Verdict == answer.Unread {
			if err := s.show(Plain, w.Feedback(p, m).Verdict); err != nil {
				return false, m, err
			}
			continue
		}
		a := Answered{Task: p.Task.Name, Code: p.Code.String(), Mark: m}
		s.Answers = append(s.Answers, a)
		return false, m, s.keep(p, a, reply, s.Now().Sub(began))
	}
}

// ErrNothingToDrill says that nothing is ready for the clock yet.
var ErrNothingToDrill = errors.New("nothing is ready for the clock yet: a drill is for tasks you have answered five times and nine in ten right; practise with scratchpass quiz first")
