package lessons

import (
	"fmt"

	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// problem makes a fresh problem of a task for this learner. A task that makes
// sense only in the other system of units is asked in that one.
func (s *Session) problem(task string, level problem.Level) (*problem.Problem, *wording.Words, error) {
	t, err := tasks.Find(task)
	if err != nil {
		return nil, nil, err
	}
	words, err := s.wordsOf(task)
	if err != nil {
		return nil, nil, err
	}
	system, lathe := s.System, s.Lathe
	if !t.Allows(system) {
		system = t.Systems[0]
		lathe = machine.DefaultLathe(system)
	}
	var best *problem.Problem
	bestAge := 0
	for range freshTries {
		p, err := problem.New(t, problem.NewCode(t.Name, level, system, s.Seeds(), lathe))
		if err != nil {
			return nil, nil, err
		}
		age := s.age(p)
		if s.wants != nil && !s.wants(p) {
			age = age / 2
		}
		if best == nil || age > bestAge {
			best, bestAge = p, age
		}
		if bestAge == neverSeen {
			break
		}
	}
	s.count++
	s.seen[numbers(best)] = s.count
	s.seen[situation(best)] = s.count
	s.lastOf[best.Task.Name] = situation(best)
	return best, words, nil
}

// neverSeen is the age of a problem that is new in numbers and situation.
const neverSeen = 1 << 30

// age is how long ago a problem like this one was shown: one with the same numbers,
// or of a decision the same situation with the same answer.
func (s *Session) age(p *problem.Problem) int {
	age := neverSeen
	if at := s.seen[numbers(p)]; at > 0 {
		age = s.count - at + 1
	}
	if at := s.seen[situation(p)]; at > 0 && situation(p) != "" {
		// Situations come back; what counts is that it is not the one just seen.
		if s.lastOf[p.Task.Name] == situation(p) {
			age = 0
		}
	}
	return age
}

func numbers(p *problem.Problem) string { return p.Task.Name + fmt.Sprint(p.Values.Givens()) }

// situation is what a decision is about; empty for a number to work out.
func situation(p *problem.Problem) string {
	if c := p.Values.Situation(); c != "" {
		return p.Task.Name + " case " + c
	}
	if p.Task.Kind.Guessable() {
		return p.Task.Name + " key " + p.Expected.Key.Keys[0]
	}
	return ""
}

// freshTries is how often other numbers are drawn when a problem is like one that
// has been seen. Some tasks have few, so it ends somewhere: with the one seen longest
// ago.
const freshTries = 16
