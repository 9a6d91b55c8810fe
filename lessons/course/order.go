package course

import (
	"slices"

	"scratchpass/content"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

// Course is the lessons in their order. One that can't be read is left out: it says so
// when it is taken.
type Course []content.Lesson

// Load reads all lessons.
func Load(lib *content.Library) Course {
	var all Course
	for _, name := range lib.LessonNames() {
		if l, err := lib.Lesson(name); err == nil {
			all = append(all, l)
		}
	}
	return all
}

// Order is the catalogue in the order in which the lessons bring the tasks; those that no
// lesson brings come last.
func Order(lib *content.Library, system machine.System) []schedule.Item {
	return Load(lib).Order(system)
}

// Order is the catalogue in the order in which the lessons bring the tasks.
func (c Course) Order(system machine.System) []schedule.Item {
	place := map[string]int{}
	for _, l := range c {
		for _, p := range l.Parts {
			if _, seen := place[p.Task]; !seen {
				place[p.Task] = len(place) + 1
			}
		}
	}
	items := schedule.Catalogue(system)
	at := func(it schedule.Item) int {
		if n := place[it.Task]; n > 0 {
			return n
		}
		return len(place) + 1
	}
	slices.SortStableFunc(items, func(a, b schedule.Item) int { return at(a) - at(b) })
	return items
}

// Special returns the tasks that only special threads need: no lesson but special ones
// brings them.
func Special(lib *content.Library) map[string]bool { return Load(lib).Special() }

// Special returns the tasks that only special threads need.
func (c Course) Special() map[string]bool {
	needed, special := map[string]bool{}, map[string]bool{}
	for _, l := range c {
		for _, p := range l.Parts {
			needed[p.Task] = needed[p.Task] || !l.Special
		}
	}
	for _, name := range tasks.Names() {
		if !needed[name] {
			special[name] = true
		}
	}
	return special
}
