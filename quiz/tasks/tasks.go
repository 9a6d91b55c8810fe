// Package tasks is the catalogue: one file a task in the folder of its stage, and under
// the same name its words in content. A task registers itself; nothing else lists them.
package tasks

import (
	"cmp"
	"fmt"

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

// All returns every task that ships, by stage and then by name.
func All() []*problem.Task { return Set{}.All() }

// Names returns the names of all tasks that ship, in the order of All.
func Names() []string { return Set{}.Names() }

// lookUp returns a task that ships, or else one of an instructor's own; nil for none.
func lookUp(name string, own map[string]*problem.Task) *problem.Task {
	return cmp.Or(shared.Registry[name], own[name])
}

// find returns a task that ships, or else one of an instructor's own.
func find(name string, own map[string]*problem.Task) (*problem.Task, error) {
	if t := lookUp(name, own); t != nil {
		return t, nil
	}
	return nil, fmt.Errorf("no task is called %s%s (work --list shows all) %w", calc.Quoted(name), content.DidYouMean(name, Set{own}.Names()), ErrNoTask)
}

// fromCode makes the problem of a code of a task that ships, or else of one of an
// instructor's own.
func fromCode(code string, own map[string]*problem.Task) (*problem.Problem, error) {
	c, err := problem.ParseCode(code)
	if err != nil {
		return nil, err
	}
	t := lookUp(c.Task, own)
	if t == nil {
		return nil, fmt.Errorf("problem code %s: no task is called %s %w%s", calc.Quoted(code), calc.Quoted(c.Task), ErrNoTask, content.DidYouMean(c.Task, Set{own}.Names()))
	}
	return problem.New(t, c)
}
