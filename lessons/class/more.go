package class

import (
	"errors"
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// Again is a blueprint of one question of a set of the room, with other numbers.
func (r *Room) Again(n, place int) (string, error) {
	if n < 0 || n >= len(r.Sets) || place < 0 || place >= r.Sets[n].Places() {
		return "", fmt.Errorf("there is no question %d", place+1)
	}
	q := r.Sets[n].Questions
	b := *q.Blueprint
	before := 0
	for _, s := range b.Slots { // the slot that the place is of
		if place < before+s.Count {
			one := s
			one.Tasks, one.Stage = q.Maker.TasksAt(place), ""
			one.Count, one.Takes, one.Name, one.Mix = 1, nil, "", len(one.Tasks) > 1
			b.Slots = []set.Slot{one}
			break
		}
		before += s.Count
	}
	return r.fresh(n, place, b)
}

// tries is how many other sets are looked at for one in which nobody has the number again that
// they just had. With few numbers to draw from there may be none: the best is taken.
const tries = 12

// fresh is a blueprint of a question in other numbers than the people of the room had of it.
func (r *Room) fresh(n, place int, b set.Blueprint) (best string, err error) {
	var ids []string
	for _, p := range r.People() {
		ids = append(ids, p.ID)
	}
	fewest := len(ids) + 1
	for try := 0; try < tries && fewest > 0; try++ {
		text, err := r.anotherOf(b, try)
		if err != nil {
			return "", err
		}
		same, err := r.sameAgain(text, n, place, ids)
		if err != nil {
			return "", err
		}
		if same < fewest {
			best, fewest = text, same
		}
	}
	return best, nil
}

// sameAgain is how many people would have the number again that they had of a question.
func (r *Room) sameAgain(blueprint string, n, place int, ids []string) (same int, err error) {
	var roster []string // in whose order they sit
	for _, a := range r.Head.Roster {
		roster = append(roster, a.ID)
	}
	q, err := r.makes(blueprint, roster)
	if err != nil {
		return 0, err
	}
	for _, id := range ids {
		had, err := r.Sets[n].Item(id, place)
		if err != nil {
			return 0, err
		}
		has, err := q.Item(id, 0)
		if err != nil {
			return 0, err
		}
		if had.Problem.Task.Kind.Numeric() && has.Problem.Expected.Text() == had.Problem.Expected.Text() {
			same++
		}
	}
	return same, nil
}

// OneMore is a blueprint of one question that was in no set, on the lathe of the set at hand,
// and in its units where the task is set in them.
func (r *Room) OneMore(of tasks.Set, task string, level int) (string, error) {
	a := r.Asking()
	if a == nil {
		return "", ErrNotNow
	}
	if task == "" {
		return "", errors.New("no task was given: give its name, such as compound-travel")
	}
	t, err := of.Find(task)
	if err != nil {
		return "", err
	}
	if level < 1 || level > 3 {
		return "", fmt.Errorf("level %d: give 1, 2 or 3", level)
	}
	b := *a.Blueprint
	one := set.Slot{Tasks: []string{t.Name}, Level: level, Count: 1}
	if system, err := machine.ParseSystem(b.Units); err == nil && !t.Allows(system) {
		one.Units = t.Systems[0].String()
	}
	b.Slots = []set.Slot{one}
	return r.another(b)
}

// mostBase is how much of the name of the first set stands in those of the others.
const mostBase = 28

// another writes a blueprint of a set of its own: another name gives other numbers.
func (r *Room) another(b set.Blueprint) (string, error) { return r.anotherOf(b, 0) }

// anotherOf is the same with a number in the name that tells several apart.
func (r *Room) anotherOf(b set.Blueprint, try int) (string, error) {
	name := r.Sets[0].Blueprint.Set
	b.Set = fmt.Sprintf("%s-more-%d", strings.TrimRight(name[:min(len(name), mostBase)], "-"), len(r.Sets))
	if try > 0 {
		b.Set += fmt.Sprint("-", try)
	}
	text, err := yaml.Marshal(b)
	return string(text), err
}
