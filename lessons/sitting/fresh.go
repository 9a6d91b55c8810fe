package sitting

import (
	"fmt"

	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// freshness remembers what has been shown in a sitting.
type freshness struct {
	seen   map[string]int    // when numbers and situations were shown last, in problems
	lastOf map[string]string // situation last shown, by task
	count  int               // problems so far
}

func newFreshness() freshness { return freshness{seen: map[string]int{}, lastOf: map[string]string{}} }

// Problem makes a fresh problem of a task for this learner. A task that makes sense only
// in the other system of units is asked in that one. wants, where it is not nil, tells
// which problems are wanted before others.
func (st *Sitting) Problem(task string, level problem.Level, wants func(*problem.Problem) bool) (*problem.Problem, *wording.Words, error) {
	t, err := st.Tasks.Find(task)
	if err != nil {
		return nil, nil, err
	}
	words, err := st.Words(task)
	if err != nil {
		return nil, nil, err
	}
	system, lathe := st.System, st.Lathe
	if !t.Allows(system) {
		system = t.Systems[0]
		lathe = machine.DefaultLathe(system)
	}
	var best *problem.Problem
	bestAge := 0
	for range freshTries {
		p, err := problem.New(t, problem.NewCode(t.Name, level, system, st.seed(), lathe))
		if err != nil {
			return nil, nil, err
		}
		age := st.fresh.age(p)
		if wants != nil && !wants(p) {
			age = age / 2
		}
		if best == nil || age > bestAge {
			best, bestAge = p, age
		}
		if bestAge == neverSeen {
			break
		}
	}
	st.fresh.add(best)
	return best, words, nil
}

// neverSeen is the age of a problem that is new in numbers and situation.
const neverSeen = 1 << 30

// freshTries is how often other numbers are drawn when a problem is like one that
// has been seen. Some tasks have few, so it ends somewhere: with the one seen longest
// ago.
const freshTries = 16

func (f *freshness) add(p *problem.Problem) {
	f.count++
	f.seen[numbers(p)] = f.count
	f.seen[situation(p)] = f.count
	f.lastOf[p.Task.Name] = situation(p)
}

// age is how long ago a problem like this one was shown: one with the same numbers,
// or of a decision the same situation with the same answer.
func (f *freshness) age(p *problem.Problem) int {
	age := neverSeen
	if at := f.seen[numbers(p)]; at > 0 {
		age = f.count - at + 1
	}
	if at := f.seen[situation(p)]; at > 0 && situation(p) != "" {
		// Situations come back; what counts is that it is not the one just seen.
		if f.lastOf[p.Task.Name] == situation(p) {
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
