package tasks

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/own"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// Set is the tasks that can be asked: those that ship, and an instructor's own questions.
// The zero value has those that ship.
type Set struct {
	own map[string]*problem.Task
}

// reserved are words that stand where the name of a task would, and mean something else.
var reserved = []string{"ask", "mark", "own"}

// Of returns the tasks of a library: those that ship, and the questions of its folder. A
// question that can't be used is an error, content.Findings with all that is wrong.
func Of(lib *content.Library) (Set, error) {
	s := Set{}
	var wrong content.Findings
	for _, name := range lib.QuestionNames() {
		t, _, err := ownTask(lib, name)
		var more content.Findings
		switch {
		case errors.As(err, &more):
			wrong = append(wrong, more...)
		case err != nil:
			return Set{}, err
		default:
			if s.own == nil {
				s.own = map[string]*problem.Task{}
			}
			s.own[name] = t
		}
	}
	if len(wrong) > 0 {
		return Set{}, wrong
	}
	return s, nil
}

// ownTask reads one question of a folder.
func ownTask(lib *content.Library, name string) (*problem.Task, *content.Question, error) {
	q, err := lib.Question(name)
	if err != nil {
		return nil, nil, err
	}
	if err := CheckOwnName(name); err != nil {
		return nil, &q, content.Findings{q.At("", err.Error())}
	}
	t, err := own.Task(name, &q)
	return t, &q, err
}

// CheckOwnName returns an error unless a question of one's own may be called so.
func CheckOwnName(name string) error {
	if shared.Registry[name] != nil || slices.Contains(reserved, name) || slices.Contains(problem.Stages, problem.Stage(name)) {
		return fmt.Errorf("a question called %s: that means something else in this program; give it another name", calc.Quoted(name))
	}
	return own.CheckName(name)
}

// CheckOwn reads the questions of a library's folder, draws many problems of each and
// reports what is wrong with their numbers.
func CheckOwn(lib *content.Library) content.Findings {
	var found content.Findings
	for _, name := range lib.QuestionNames() {
		t, q, err := ownTask(lib, name)
		var more content.Findings
		switch {
		case errors.As(err, &more) && q != nil: // what can't even be read is said by the check of the files
			found = append(found, more...)
		case err == nil:
			found = append(found, own.Examine(t, q)...)
		}
	}
	return found
}

// All returns every task, by stage and then by name; the instructor's own come last.
func (s Set) All() []*problem.Task {
	all := slices.Collect(maps.Values(shared.Registry))
	all = slices.AppendSeq(all, maps.Values(s.own))
	place := func(t *problem.Task) int {
		if t.Stage == problem.Own {
			return len(problem.Stages)
		}
		return slices.Index(problem.Stages, t.Stage)
	}
	slices.SortFunc(all, func(a, b *problem.Task) int {
		if c := place(a) - place(b); c != 0 {
			return c
		}
		return strings.Compare(a.Name, b.Name)
	})
	return all
}

// Names returns the names of all tasks, in the order of All.
func (s Set) Names() []string {
	var names []string
	for _, t := range s.All() {
		names = append(names, t.Name)
	}
	return names
}

// Find returns a task by name. The error offers the nearest names.
func (s Set) Find(name string) (*problem.Task, error) {
	return find(name, s.own)
}

// Has reports whether a task is here.
func (s Set) Has(name string) bool { return lookUp(name, s.own) != nil }

// ErrNoTask says that a task is not here.
var ErrNoTask = errors.New("(if it is an instructor's own question, give its folder with --content DIR)")

// FromCode makes the problem of a code.
func (s Set) FromCode(code string) (*problem.Problem, error) {
	return fromCode(code, s.own)
}

// OfStage returns the tasks of a stage; of problem.Own the instructor's.
func (s Set) OfStage(stage problem.Stage) []*problem.Task {
	return slices.DeleteFunc(s.All(), func(t *problem.Task) bool { return t.Stage != stage })
}
