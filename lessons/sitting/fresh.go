package sitting

import (
	"fmt"
	"slices"

	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// freshness remembers what has been shown in a sitting.
type freshness struct {
	seen   map[string]int      // when numbers and situations were shown last, in problems
	lastOf map[string][]string // the situations shown last, by task, the latest at the end
	count  int                 // problems so far
}

func newFreshness() freshness {
	return freshness{seen: map[string]int{}, lastOf: map[string][]string{}}
}

// scenesKept is how many of the situations of a task that were shown last come not at once
// again: two of four or more leave enough to choose from that none can be foreseen.
const scenesKept = 2

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
	if err := st.recall(t); err != nil {
		return nil, nil, err
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

// recall reads once which situations of a task the last sittings have shown.
func (st *Sitting) recall(t *problem.Task) error {
	if _, known := st.fresh.lastOf[t.Name]; known || st.Book == nil || !t.Situations() {
		return nil
	}
	scenes, err := Fact(st, func() ([]string, error) { return st.Book.Situations(t.Name, scenesKept) })
	if err != nil {
		return err
	}
	st.fresh.lastOf[t.Name] = []string{}
	for _, scene := range slices.Backward(scenes) { // the latest comes first
		st.fresh.shown(t.Name, t.Name+" case "+scene)
	}
	return nil
}

// shown notes the situation that a task was shown in last.
func (f *freshness) shown(task, situation string) {
	last := append(f.lastOf[task], situation)
	f.lastOf[task] = last[max(0, len(last)-scenesKept):]
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
	f.shown(p.Task.Name, situation(p))
}

// age is how long ago a problem like this one was shown: one with the same numbers,
// or of a decision the same situation with the same answer.
func (f *freshness) age(p *problem.Problem) int {
	age := neverSeen
	if at := f.seen[numbers(p)]; at > 0 {
		age = f.count - at + 1
	}
	last := f.lastOf[p.Task.Name]
	if p.Values.Situation() == "" && len(last) > 1 { // of answers alone there are too few to keep two away
		last = last[len(last)-1:]
	}
	if of := situation(p); of != "" { // situations come back, but not at once
		for i, one := range last {
			if one == of { // 0 for the one just seen
				age = min(age, len(last)-1-i)
			}
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
