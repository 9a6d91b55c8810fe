package course

import (
	"slices"

	"scratchpass/content"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

// Order is the catalogue in the order in which the lessons bring the tasks; those that no
// lesson brings come last.
func Order(lib *content.Library, system machine.System) []schedule.Item {
	place := map[string]int{}
	for _, l := range readable(lib) {
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
func Special(lib *content.Library) map[string]bool {
	needed, special := map[string]bool{}, map[string]bool{}
	for _, l := range readable(lib) {
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

// readable are the lessons that can be read; one that can't says so when it is taken.
func readable(lib *content.Library) []content.Lesson {
	var all []content.Lesson
	for _, name := range lib.LessonNames() {
		if l, err := lib.Lesson(name); err == nil {
			all = append(all, l)
		}
	}
	return all
}
