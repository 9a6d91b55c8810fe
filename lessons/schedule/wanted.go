package schedule

import (
	"time"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
)

// Wanted are the tasks that a later day brings back by this time: those that are due for
// review, and those that were shown on one day and can be shown on another now. The
// items stand in the order of the course, and so do these.
func Wanted(items []Item, of map[string]record.Summary, now time.Time) []string {
	var names []string
	for _, it := range items {
		switch reason(it, of[it.Task], now, false) {
		case SafetyCriticalDue, AnotherDay, IsDue:
			names = append(names, it.Task)
		}
	}
	return names
}

// ShownOn are the tasks of which a whole run was shown last on the date of a moment, and
// are shown since: what that day gained.
func ShownOn(items []Item, of map[string]record.Summary, day time.Time) []string {
	date := mastery.MomentOf(day).Day
	var names []string
	for _, it := range items {
		if s := of[it.Task]; s.Mastered && s.Shown.Day == date {
			names = append(names, it.Task)
		}
	}
	return names
}

// Minutes is how long answers to some tasks take, one each: as long as this learner took
// for them on average, or where that is not known as they usually take.
func Minutes(items []Item, of map[string]record.Summary, names []string) float64 {
	wanted := map[string]bool{}
	for _, name := range names {
		wanted[name] = true
	}
	sum := 0.0
	for _, it := range items {
		if !wanted[it.Task] {
			continue
		}
		if s := of[it.Task]; s.Answers > 0 && s.Seconds > 0 {
			sum += s.Seconds / float64(s.Answers) / 60
		} else {
			sum += it.Minutes
		}
	}
	return sum
}
