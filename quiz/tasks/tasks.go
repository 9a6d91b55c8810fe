// Package tasks is the catalogue: one file a task in the folder of its stage, and under
// the same name its words in content. A task registers itself; nothing else lists them.
package tasks

import (
	"scratchpass/quiz/problem"

	// The stages; their tasks register themselves.
	_ "scratchpass/quiz/tasks/blank"
	_ "scratchpass/quiz/tasks/fitting"
	_ "scratchpass/quiz/tasks/infeed"
	_ "scratchpass/quiz/tasks/passes"
	_ "scratchpass/quiz/tasks/reading"
	_ "scratchpass/quiz/tasks/safety"
	_ "scratchpass/quiz/tasks/setup"
	_ "scratchpass/quiz/tasks/shape"
)

// All returns every task that ships, by stage and then by name.
func All() []*problem.Task { return Set{}.All() }

// Names returns the names of all tasks that ship, in the order of All.
func Names() []string { return Set{}.Names() }

// Find returns a task that ships. The error offers the nearest names.
func Find(name string) (*problem.Task, error) { return Set{}.Find(name) }

// FromCode makes the problem of a code of a task that ships.
func FromCode(code string) (*problem.Problem, error) { return Set{}.FromCode(code) }
