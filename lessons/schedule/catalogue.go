package schedule

import (
	"scratchpass/lessons/record"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

// Catalogue is the schedule's view of all tasks, in the order of the stages, for a
// learner who works in a system of units.
func Catalogue(system machine.System) []Item {
	var items []Item
	for _, t := range tasks.All() {
		items = append(items, ItemOf(t, system))
	}
	return items
}

// Book is a learner's record with the fold that makes summaries of its answers.
type Book struct {
	*record.Record
	fold record.Fold
}

// NewBook returns the book of a record. One whose summaries are not those of its answers, by
// the rule of today, gets them now.
func NewBook(r *record.Record, system machine.System) (Book, error) {
	b := Book{r, Fold(Catalogue(system))}
	old, err := r.NeedsRefold(FoldVersion)
	if err == nil && old {
		err = r.Refold(b.fold, FoldVersion)
	}
	return b, err
}

// Keep keeps an answer and folds it into the summary of its task.
func (b Book) Keep(a record.Answer) error { return b.Append(a, b.fold) }
