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

// Repeat is a question of a room that is to be asked again in other numbers. It keeps nothing of
// the room that changes: its blueprint is looked for while the room goes on.
type Repeat struct {
	had    *Questions
	place  int
	slot   set.Slot
	makes  Maker
	roster []string // in whose order people sit
	people []string // who has the question
	name   func(try int) string
}

// Again is one question of a set of the room, to be asked again.
func (r *Room) Again(n, place int) (Repeat, error) {
	if n < 0 || n >= len(r.Sets) || place < 0 || place >= r.Sets[n].Places() {
		return Repeat{}, fmt.Errorf("there is no question %d", place+1)
	}
	again := Repeat{had: r.Sets[n].Questions, place: place, makes: r.makes, roster: r.Head.ids(), name: r.another()}
	for _, p := range r.People() {
		again.people = append(again.people, p.ID)
	}
	before := 0
	for _, s := range again.had.Blueprint.Slots { // the slot that the place is of
		if place < before+s.Count {
			again.slot = s
			again.slot.Tasks, again.slot.Stage = again.had.Maker.TasksAt(place), ""
			again.slot.Count, again.slot.Takes, again.slot.Name, again.slot.Mix = 1, nil, "", len(again.slot.Tasks) > 1
			break
		}
		before += s.Count
	}
	return again, nil
}

// tries is how many other sets are looked at for one in which nobody has the number again that
// they just had. With few numbers to draw from there may be none: the best is taken.
const tries = 12

// Blueprint is one of the question in other numbers than the people of the room had of it.
func (q Repeat) Blueprint() (best string, err error) {
	fewest := len(q.people) + 1
	for try := 0; try < tries && fewest > 0; try++ {
		text, err := oneSlot(*q.had.Blueprint, q.slot, q.name(try))
		if err != nil {
			return "", err
		}
		same, err := q.same(text)
		if err != nil {
			return "", err
		}
		if same < fewest {
			best, fewest = text, same
		}
	}
	return best, nil
}

// same is how many people would have the number again that they had of the question.
func (q Repeat) same(blueprint string) (same int, err error) {
	next, err := q.makes(blueprint, q.roster)
	if err != nil {
		return 0, err
	}
	for _, id := range q.people {
		had, err := q.had.Item(id, q.place)
		if err != nil {
			return 0, err
		}
		has, err := next.Item(id, 0)
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
	b := r.like()
	one := set.Slot{Tasks: []string{t.Name}, Level: level, Count: 1}
	if system, err := machine.ParseSystem(b.Units); err == nil && !t.Allows(system) {
		one.Units = t.Systems[0].String()
	}
	return oneSlot(b, one, r.another()(0))
}

// like is a blueprint as that of the set at hand; in a room that began at the bench, on the
// lathe there.
func (r *Room) like() set.Blueprint {
	if a := r.Asking(); a != nil {
		return *a.Blueprint
	}
	b := set.Blueprint{Title: r.Head.Title, Units: machine.Imperial.String()}
	if round, _ := r.Round(); round != nil {
		b.Units = round.Pass.Plan.Job.System().String()
	}
	return b
}

// mostBase is how much of the name of the first set stands in those of the others.
const mostBase = 28

// another names sets that are none of the room's: another name gives other numbers. A try above
// 0 tells several apart.
func (r *Room) another() func(try int) string {
	first, n := r.Head.Began.Format("class-2006-01-02"), len(r.Sets)
	if n > 0 {
		first = r.Sets[0].Blueprint.Set
	}
	name := fmt.Sprintf("%s-more-%d", strings.TrimRight(first[:min(len(first), mostBase)], "-"), n)
	return func(try int) string {
		if try > 0 {
			return fmt.Sprint(name, "-", try)
		}
		return name
	}
}

// oneSlot writes a blueprint anew with one slot and a name of its own.
func oneSlot(b set.Blueprint, s set.Slot, name string) (string, error) {
	b.Set, b.Slots = name, []set.Slot{s}
	text, err := yaml.Marshal(b)
	return string(text), err
}
