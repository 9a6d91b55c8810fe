package class

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"scratchpass/calc"
	"scratchpass/quiz/set"
)

// Again is a blueprint of one question of a set of the room, with other numbers.
func (r *Room) Again(n, place int) (string, error) {
	if n < 0 || n >= len(r.Sets) || place < 0 || place >= r.Sets[n].Places() {
		return "", fmt.Errorf("there is no question %d", place+1)
	}
	b := *r.Sets[n].Blueprint
	i := 0
	for _, s := range b.Slots { // the slot that the place is of
		if place < i+s.Count {
			one := s
			one.Count, one.Takes, one.Name = 1, nil, ""
			if len(s.Tasks) > 1 && !s.Mix {
				one.Tasks = []string{s.Tasks[(place-i)%len(s.Tasks)]}
			}
			b.Slots = []set.Slot{one}
			break
		}
		i += s.Count
	}
	return r.another(b)
}

// OneMore is a blueprint of one question that was in no set, in the units and on the lathe of
// the set at hand.
func (r *Room) OneMore(task string, level int) (string, error) {
	a := r.Asking()
	if a == nil {
		return "", ErrNotNow
	}
	if level < 1 || level > 3 {
		return "", fmt.Errorf("level %d: give 1, 2 or 3", level)
	}
	if task == "" {
		return "", fmt.Errorf("task %s: give the name of a task", calc.Quoted(task))
	}
	b := *a.Blueprint
	b.Slots = []set.Slot{{Tasks: []string{task}, Level: level, Count: 1}}
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
