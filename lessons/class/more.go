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
	return r.another(b)
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
func (r *Room) another(b set.Blueprint) (string, error) {
	name := r.Sets[0].Blueprint.Set
	b.Set = fmt.Sprintf("%s-more-%d", strings.TrimRight(name[:min(len(name), mostBase)], "-"), len(r.Sets))
	text, err := yaml.Marshal(b)
	return string(text), err
}
