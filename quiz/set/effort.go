package set

import "scratchpass/quiz/problem"

// Effort is what a sheet asks of someone.
type Effort struct {
	Questions int
	Decisions int // questions answered by choosing or ordering
	Worked    int // questions with numbers to work out
	Steps     int // lines of working to those numbers, all together
	Critical  int // questions on what can hurt someone
	Minutes   float64
}

// EffortOf adds up the questions of a sheet. minutes is how long an answer to a task usually
// takes.
func EffortOf(items []Item, minutes func(*problem.Task) float64) Effort {
	e := Effort{Questions: len(items)}
	for _, it := range items {
		task := it.Problem.Task
		if task.Kind.Worded() {
			e.Decisions++
		} else {
			e.Worked++
			e.Steps += len(it.Problem.Working.Steps)
		}
		if task.SafetyCritical {
			e.Critical++
		}
		e.Minutes += minutes(task)
	}
	return e
}
