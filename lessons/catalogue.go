package lessons

import (
	"slices"

	"scratchpass/content"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

// Catalogue is the schedule's view of all tasks, in the order of the stages, for a
// learner who works in a system of units.
func Catalogue(system machine.System) []schedule.Item {
	var items []schedule.Item
	for _, t := range tasks.All() {
		items = append(items, schedule.ItemOf(t, system))
	}
	return items
}

// CourseOrder is the catalogue in the order in which the lessons bring the tasks;
// those that no lesson brings come last.
func CourseOrder(lib *content.Library, system machine.System) []schedule.Item {
	place := map[string]int{}
	for _, name := range lib.LessonNames() {
		l, err := lib.Lesson(name)
		if err != nil {
			continue // a lesson that can't be read says so when it is taken
		}
		for _, p := range l.Parts {
			if _, seen := place[p.Task]; !seen {
				place[p.Task] = len(place) + 1
			}
		}
	}
	items := Catalogue(system)
	at := func(it schedule.Item) int {
		if n := place[it.Task]; n > 0 {
			return n
		}
		return len(place) + 1
	}
	slices.SortStableFunc(items, func(a, b schedule.Item) int { return at(a) - at(b) })
	return items
}
