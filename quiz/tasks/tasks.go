// Package tasks is the catalogue: one file a task in the folder of its stage, and under
// the same name its words in content. A task registers itself; nothing else lists them.
package tasks

import (
	"fmt"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"

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

// All returns every task, by stage and then by name.
func All() []*problem.Task {
	var all []*problem.Task
	for _, t := range shared.Registry {
		all = append(all, t)
	}
	slices.SortFunc(all, func(a, b *problem.Task) int {
		if c := slices.Index(problem.Stages, a.Stage) - slices.Index(problem.Stages, b.Stage); c != 0 {
			return c
		}
		return strings.Compare(a.Name, b.Name)
	})
	return all
}

// Names returns the names of all tasks, in the order of All.
func Names() []string {
	var names []string
	for _, t := range All() {
		names = append(names, t.Name)
	}
	return names
}

// Find returns a task by name. The error offers the nearest names.
func Find(name string) (*problem.Task, error) {
	if t := shared.Registry[name]; t != nil {
		return t, nil
	}
	return nil, fmt.Errorf("no task is called %s%s (work --list shows all)", calc.Quoted(name), content.DidYouMean(name, Names()))
}

// FromCode makes the problem of a code.
func FromCode(code string) (*problem.Problem, error) {
	c, err := problem.ParseCode(code)
	if err != nil {
		return nil, err
	}
	t, err := Find(c.Task)
	if err != nil {
		return nil, err
	}
	return problem.New(t, c)
}

// OfStage returns the tasks of a stage.
func OfStage(s problem.Stage) []*problem.Task {
	return slices.DeleteFunc(All(), func(t *problem.Task) bool { return t.Stage != s })
}
