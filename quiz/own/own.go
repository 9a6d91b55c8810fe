// Package own makes tasks of an instructor's own questions, which stand as data in a folder
// of theirs. Such a task is like those that ship: it is drawn from a code, draws that are
// ambiguous are thrown away, and its mistakes have names.
package own

import (
	"fmt"
	"hash/fnv"
	"maps"
	"regexp"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// Kinds are the kinds of questions, as they are written.
var Kinds = []string{"choice", "several", "order", "number"}

// nameForm is what a question may be called: its name stands in problem codes.
var nameForm = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// Limits of one question: what has more is no question for one line of a sheet.
const (
	mostName    = 60
	mostInputs  = 12
	mostSteps   = 12
	mostListed  = 200
	mostOptions = 9
	mostDraws   = 100_000 // numbers in one range
)

// Task is a question as a task. The error is content.Findings with all that is wrong.
func Task(name string, q *content.Question) (*problem.Task, error) {
	r := &reader{q: q, task: &problem.Task{Name: name, Inputs: []problem.Input{}, Stage: problem.Own, SafetyCritical: len(q.Safety) > 0, Mark: markOf(q)}, told: map[string]bool{}}
	if err := CheckName(name); err != nil {
		r.say("", "%v", err)
	}
	r.inputs()
	r.texts()
	switch q.Kind {
	case "number":
		r.number()
	case "choice", "several", "order":
		r.options()
	default:
		r.say("kind", "kind %q: give one of %s%s", q.Kind, strings.Join(Kinds, ", "), content.DidYouMean(q.Kind, Kinds))
	}
	if len(r.found) > 0 {
		return nil, r.found
	}
	return r.task, nil
}

// CheckName returns an error unless a question may be called so.
func CheckName(name string) error {
	if !nameForm.MatchString(name) || len(name) > mostName {
		return fmt.Errorf("a question called %s: its name stands in codes, so give small letters, figures and hyphens, such as stems-from-a-bar", calc.Quoted(name))
	}
	return nil
}

// reader makes one task.
type reader struct {
	q      *content.Question
	task   *problem.Task
	ranges []drawn         // what each input is drawn from, in the order of the task's inputs
	told   map[string]bool // inputs that the question tells
	found  content.Findings
}

// say notes what is wrong, at the line where a text of the file stands.
func (r *reader) say(at, format string, args ...any) {
	r.found = append(r.found, r.q.At(at, fmt.Sprintf(format, args...)))
}

// texts looks at which inputs the question tells. A name that is no input is a mistake.
func (r *reader) texts() {
	names := slices.Sorted(maps.Keys(r.q.Inputs))
	look := func(where, text string) {
		content.Fill(text, func(name string) (string, bool) {
			switch {
			case r.isInput(name):
			case len(names) == 0:
				r.say(where, "%s has ${%s}, and the question has no inputs: write the number itself, or add inputs with %s", where, name, name)
			default:
				r.say(where, "%s has ${%s}, which is no input; the inputs are %s%s", where, name, strings.Join(names, ", "), content.DidYouMean(name, names))
			}
			r.told[name] = true
			return "", true
		})
	}
	plain := func(where, text string) {
		if strings.Contains(text, "$") {
			r.say(where, "%s: it is shown as it stands; only ask and options tell numbers, so write it without $", where)
		}
	}
	look("ask", r.q.Ask)
	for _, name := range slices.Sorted(maps.Keys(r.q.Options)) {
		look(name, r.q.Options[name])
	}
	for _, name := range slices.Sorted(maps.Keys(r.q.Mistakes)) {
		plain(name, r.q.Mistakes[name].Say)
	}
	plain("at_the_lathe", r.q.AtTheLathe)
	plain("hint", r.q.Hint)
	plain("title", r.q.Title)
	for _, name := range names {
		if !r.told[name] {
			r.say(name, "the question never tells ${%s}: put it into ask, or take the input out", name)
		}
	}
}

func (r *reader) isInput(name string) bool {
	_, ok := r.q.Inputs[name]
	return ok
}

// options reads a question that is answered by its options.
func (r *reader) options() {
	q := r.q
	if q.Answer != nil || len(q.Steps) > 0 {
		r.say("kind", "answer and steps belong to kind: number; a %s has options and right", q.Kind)
	}
	names := slices.Sorted(maps.Keys(q.Options))
	if len(names) < 2 || len(names) > mostOptions {
		r.say("options", "options: there are %d: give 2 to %d", len(names), mostOptions)
	}
	r.known("right", q.Right, names)
	for _, name := range slices.Sorted(maps.Keys(q.Mistakes)) {
		if q.Mistakes[name].Formula != "" {
			r.say(name, "the mistake %s has a formula, which belongs to kind: number", name)
		}
	}
	if q.Kind != "order" && len(q.Either) > 0 {
		r.say("either", "either belongs to kind: order")
	}
	switch q.Kind {
	case "choice":
		r.choice(names)
	case "several":
		r.several(names)
	case "order":
		r.order(names)
	}
	r.task.Draw = r.draw
}

// known looks at a list of names of options.
func (r *reader) known(where string, list, names []string) {
	for i, name := range list {
		switch {
		case !slices.Contains(names, name):
			r.say(name, "%s: no option is called %q; they are %s%s", where, name, strings.Join(names, ", "), content.DidYouMean(name, names))
		case slices.Contains(list[:i], name):
			r.say(name, "%s: %s stands twice", where, name)
		}
	}
}

func (r *reader) choice(names []string) {
	q := r.q
	if len(q.Right) != 1 {
		r.say("right", "right: there are %d: give the one option that is right, such as right: [%s]", len(q.Right), first(names))
		return
	}
	for _, name := range names {
		if _, ok := q.Mistakes[name]; !ok && name != q.Right[0] {
			r.say(name, "the wrong option %s has no mistake of its name that says what is wrong with it", name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(q.Mistakes)) {
		switch {
		case !slices.Contains(names, name):
			r.say(name, "mistakes: no option is called %q; a mistake of a choice has the name of a wrong option%s", name, content.DidYouMean(name, names))
		case name == q.Right[0]:
			r.say(name, "mistakes: %s is the right option", name)
		case len(q.Mistakes[name].Gives) > 0:
			r.say(name, "the mistake %s needs no gives: it chooses the option of its name", name)
		}
		r.task.Errors = append(r.task.Errors, problem.CommonError{Name: name})
	}
	r.task.Kind = answer.Choice
	right := q.Right[0]
	r.task.Work = func(v problem.Values) (problem.Working, error) { return v.Working().Choice(right) }
}

func (r *reader) several(names []string) {
	if len(r.q.Right) == 0 {
		r.say("right", "right: give the options that are right, such as right: [%s]", first(names))
	}
	r.given(names, func(gives []string) bool { return len(gives) > 0 })
	r.apart(&answer.Expected{Kind: answer.Several, Options: names, Key: answer.OptionsResponse(r.q.Right...)})
	r.task.Kind, r.task.Shuffled = answer.Several, true
	right := slices.Clone(r.q.Right)
	r.task.Work = func(v problem.Values) (problem.Working, error) { return v.Working().Several(names, right) }
}

func (r *reader) order(names []string) {
	if len(names) < 3 {
		r.say("options", "options: give at least 3 steps to put in order")
	}
	if len(r.q.Right) != len(names) {
		r.say("right", "right: give all %d steps in their order; there are %d", len(names), len(r.q.Right))
	}
	r.given(names, func(gives []string) bool { return len(gives) == len(names) })
	var free [][2]string
	for _, pair := range r.q.Either {
		if len(pair) != 2 {
			r.say("either", "either: give pairs of steps, such as - [%s, %s]", first(names), names[len(names)-1])
			continue
		}
		r.known("either", pair, names)
		free = append(free, [2]string{pair[0], pair[1]})
	}
	r.apart(&answer.Expected{Kind: answer.Order, Options: names, Free: free, Key: answer.OptionsResponse(r.q.Right...)})
	r.task.Kind = answer.Order
	right := slices.Clone(r.q.Right)
	r.task.Work = func(v problem.Values) (problem.Working, error) { return v.Working().OrderWith(free, right...) }
}

// given reads mistakes that choose or order options.
func (r *reader) given(names []string, fit func([]string) bool) {
	if len(r.q.Mistakes) == 0 {
		r.say("", "mistakes is missing: name at least one, with what it gives and what to say to it")
	}
	for _, name := range slices.Sorted(maps.Keys(r.q.Mistakes)) {
		gives := r.q.Mistakes[name].Gives
		if !fit(gives) {
			r.say(name, "the mistake %s: gives has %d options; give those that someone would name who makes it, of an order all of them", name, len(gives))
		}
		r.known("the mistake "+name, gives, names)
		response := answer.OptionsResponse(gives...)
		r.task.Errors = append(r.task.Errors, problem.CommonError{Name: name, Work: func(problem.Values) answer.Response { return response }})
	}
}

// systems are the systems of units in which a question with lengths can be asked; none is
// both.
func systems(units []machine.Unit) []machine.System {
	var inch, mm bool
	for _, u := range units {
		inch = inch || u.Name == machine.InchUnit.Name
		mm = mm || u.Name == machine.MMUnit.Name
	}
	switch {
	case inch && !mm:
		return []machine.System{machine.Imperial}
	case mm && !inch:
		return []machine.System{machine.Metric}
	}
	return nil
}

// markOf is a short mark of all that the numbers and the key of a question hang on, and not
// of its words.
func markOf(q *content.Question) string {
	bare := *q
	bare.Title, bare.Skill, bare.Ask, bare.Hint, bare.AtTheLathe, bare.Drawing, bare.Safety = "", "", "", "", "", "", nil
	bare.Inputs, bare.Options, bare.Mistakes = maps.Clone(q.Inputs), maps.Clone(q.Options), maps.Clone(q.Mistakes)
	bare.Steps = slices.Clone(q.Steps)
	for name, in := range bare.Inputs {
		in.Means, in.Name, in.Decimals = "", "", nil
		bare.Inputs[name] = in
	}
	for name := range bare.Options {
		bare.Options[name] = ""
	}
	for name, m := range bare.Mistakes {
		m.Say = ""
		bare.Mistakes[name] = m
	}
	for i := range bare.Steps {
		bare.Steps[i].Means = ""
	}
	if q.Answer != nil {
		a := *q.Answer
		a.Means = ""
		bare.Answer = &a
	}
	text, err := yaml.Marshal(bare) // without what is left out: a field more in the format changes no mark
	if err != nil {
		return "" // of plain data there is no error
	}
	h := fnv.New32a()
	h.Write(text) // a hash never returns an error
	return fmt.Sprintf("%08x", h.Sum32())
}
