package problems

import (
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// isCode reports whether a word is meant as a problem code: the name of a task has no @.
func isCode(word string) bool { return strings.Contains(word, "@") }

// remakeOrDraw remakes the problem of a code, or draws one of a task.
func remakeOrDraw(r *cli.Run, codeOrTask string, level problem.Level) (*problem.Problem, *wording.Words, error) {
	lib, err := r.Library()
	if err != nil {
		return nil, nil, err
	}
	of, err := tasks.Of(lib)
	if err != nil {
		return nil, nil, err
	}
	if isCode(codeOrTask) {
		return remake(lib, codeOrTask)
	}
	t, err := of.Find(codeOrTask)
	if err != nil {
		return nil, nil, cli.UsageError(err)
	}
	lathe, system, err := r.Lathe()
	if err != nil {
		return nil, nil, err
	}
	if !t.Allows(system) {
		if r.Units != "" {
			return nil, nil, cli.Usagef("--units %s: %s is only set with --units %s", r.Units, t.Name, t.Systems[0])
		}
		system = t.Systems[0]
		lathe = machine.DefaultLathe(system)
	}
	return remake(lib, problem.NewCode(t.Name, level, system, r.Seeds()().First(), lathe).String())
}

// remake remakes the problem of a code, with its words.
func remake(lib *content.Library, code string) (*problem.Problem, *wording.Words, error) {
	of, err := tasks.Of(lib)
	if err != nil {
		return nil, nil, err
	}
	p, err := of.FromCode(code)
	if err != nil {
		return nil, nil, cli.UsageError(err)
	}
	w, err := wording.Load(lib, p.Task.Name)
	return p, w, err
}
