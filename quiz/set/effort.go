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
		e.Minutes += minutes(task) + more(it.Problem)
	}
	return e
}

// What a question takes beyond the usual answer of its kind, in minutes: each step of an order
// has to find its place, and each further line of working is worked out.
const (
	minutesAStep = 0.15
	minutesALine = 0.75
)

func more(p *problem.Problem) float64 {
	if p.Task.Kind.InOrder() {
		return minutesAStep * float64(len(p.Expected.Key.Keys))
	}
	worked := 0
	for _, s := range p.Working.Steps {
		if s.Formula != "" {
			worked++
		}
	}
	return minutesALine * float64(max(worked-1, 0))
}
