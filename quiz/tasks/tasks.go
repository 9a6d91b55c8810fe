// Package tasks holds the catalogue: one file a task, and under the same name its
// words in content. A task registers itself; nothing else lists them.
package tasks

import (
	"fmt"
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"

	"scratchpass/calc"
	"scratchpass/quiz/problem"
)

// registry is filled by the package variables of the task files before main runs
// and is never changed afterwards.
var registry = map[string]*problem.Task{}

func register(t problem.Task) *problem.Task {
	if registry[t.Name] != nil {
		panic("tasks: two tasks are called " + t.Name)
	}
	registry[t.Name] = &t
	return &t
}

// All returns every task, by stage and then by name.
func All() []*problem.Task {
	var all []*problem.Task
	for _, t := range registry {
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
	if t := registry[name]; t != nil {
		return t, nil
	}
	return nil, fmt.Errorf("no task is called %s%s (work --list shows all)", calc.Quoted(name), Offer(name, Names()))
}

// Offer words the nearest names for the end of an error, or nothing when none is
// near.
func Offer(word string, names []string) string {
	near := Nearest(word, names)
	if len(near) == 0 {
		return ""
	}
	return "; did you mean " + strings.Join(near, ", ") + "?"
}

// Nearest returns up to three names that are most like a word: those that contain
// it first, then by edit distance.
func Nearest(word string, names []string) []string {
	if len(word) > 60 {
		word = word[:60]
	}
	near := slices.Clone(names)
	far := func(name string) int {
		d := levenshtein.ComputeDistance(word, name)
		if word != "" && strings.Contains(name, word) {
			d -= 100
		}
		return d
	}
	slices.SortStableFunc(near, func(a, b string) int { return far(a) - far(b) })
	near = near[:min(3, len(near))]
	for len(near) > 0 && far(near[len(near)-1]) > len(word)/2+1 { // the third-best guess may be no guess
		near = near[:len(near)-1]
	}
	return near
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

// inputs joins the inputs of a task.
func inputs(first []problem.Input, more ...problem.Input) []problem.Input {
	return append(slices.Clone(first), more...)
}

// length is an input that is a length, its range in inches.
func length(name, symbol string, low, high float64) problem.Input {
	return problem.Input{Name: name, Symbol: symbol, Type: problem.InputLength, Low: low, High: high}
}

// compoundAngle are the two ways of telling how the compound stands: its angle from
// the cross-slide line, or the reading of a scale that has its zero along the bed.
var compoundAngle = []problem.Input{
	{Name: "angle", Symbol: "a", Type: problem.InputAngle, Low: 0, High: 45, Group: "angle"},
	{Name: "scale", Symbol: "s", Type: problem.InputAngle, Low: 45, High: 90, Group: "angle"},
}

// tellAngle draws one of the three published settings and tells it: plainly, or at
// level 3 as the scale of the learner's own compound shows it.
func tellAngle(d *problem.Draw, v *problem.Values) {
	a := problem.Pick(d, 29, 29.5, 30)
	if d.Level == problem.OnTheJob && d.Lathe.CompoundZero == calc.ZeroAlong {
		v.Set("scale", 90-a)
		return
	}
	v.Set("angle", a)
}

// angleStep adds the step from a scale reading to the angle, where there is one.
func angleStep(w *problem.Working, v problem.Values) calc.Angle {
	if v.Has("scale") {
		return w.Angle("a", "90 - s")(calc.CompoundScaleReading(v.Angle("scale"), calc.ZeroAlong))
	}
	return v.Angle("angle")
}

// angleOf is angleStep for a slip.
func angleOf(v problem.Values) calc.Angle {
	if v.Has("scale") {
		return 90 - v.Angle("scale")
	}
	return v.Angle("angle")
}

// externalDepth is the single depth by the 17/24 H factor, for slips that start
// from it.
func externalDepth(v problem.Values) calc.Length {
	return v.Pitch().Times(calc.UnifiedExternal.Factor())
}

// habitAngle is the compound setting that a wrong road brings in out of habit.
const habitAngle calc.Angle = 29.5
