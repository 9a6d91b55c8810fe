package schedule

import (
	"slices"
	"sync"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// Minutes that an answer takes, roughly: a number is worked out, an option read.
const (
	typedMinutes  = 1.25
	choiceMinutes = 0.5
)

// usualTried is how many problems are drawn to see what comes up, and how often a
// situation or a common error must come up to count: a rare one would hold a learner up
// for ever. An error that comes up less often than the last of these shows in some
// problems only.
const (
	usualTried      = 60
	situationsLeast = 3
	errorsLeast     = 12
	errorsMostly    = 45
)

// Item is a task as the schedule sees it.
type Item struct {
	Task           string
	Stage          problem.Stage
	SafetyCritical bool         // getting it wrong can hurt someone
	Rule           mastery.Rule // without the situations and errors that usually come up
	Minutes        float64      // how long one answer takes

	// usual tells what comes up in a system of units, which a run must cover. It is asked
	// only for tasks that are answered.
	usual  map[machine.System]func() usual
	system machine.System
	task   *problem.Task
}

// usual are the situations and the common errors that come up often enough.
type usual struct{ situations, errors, seldom []string }

// ItemOf describes a task for a learner who works in a system of units.
func ItemOf(t *problem.Task, system machine.System) Item {
	it := Item{Task: t.Name, Stage: t.Stage, SafetyCritical: t.SafetyCritical, Minutes: typedMinutes, task: t}
	it.Rule = mastery.Rule{SafetyCritical: t.SafetyCritical, Choice: t.Kind.Guessable(), OneKey: t.Kind.OneKey()}
	if t.Kind.Guessable() {
		it.Minutes = choiceMinutes
	}
	it.system = system
	it.usual = map[machine.System]func() usual{}
	for _, s := range []machine.System{machine.Imperial, machine.Metric} {
		it.usual[s] = sync.OnceValue(func() usual { return usualOf(t, s) })
	}
	return it
}

// RuleFor is the item's rule with what usually comes up in the system of units that a
// problem is set in.
func (it Item) RuleFor(system machine.System) mastery.Rule {
	r := it.Rule
	if of, ok := it.usual[system]; ok {
		u := of()
		r.Situations, r.Errors = u.situations, u.errors
		if !r.Choice || r.SafetyCritical { // options of one day are right by luck too often to ask less
			r.Seldom = u.seldom
		}
	}
	return r
}

// Missing tells what is missing until the task is shown to someone who works in the
// item's system of units; ok is false when nothing is.
func (it Item) Missing(s record.Summary) (m mastery.Missing, ok bool) {
	return it.RuleFor(it.system).Missing(s.State)
}

// Wants reports whether a problem would bring a run further: it shows a situation or
// gives a chance to a common error that the run at hand is waiting for. Where nothing is
// missing, any problem does.
func (it Item) Wants(s record.Summary, p *problem.Problem) bool {
	m, ok := it.RuleFor(p.Code.System).Missing(s.State)
	if !ok || len(m.Situations) == 0 && len(m.Errors) == 0 {
		return true
	}
	if slices.Contains(m.Situations, p.Values.Situation()) {
		return true
	}
	would := errorsOf(p)
	return slices.ContainsFunc(m.Errors, func(name string) bool { return slices.Contains(would, name) })
}

// errorsOf are the common errors that would have shown in the problem of a code; none
// where the code makes no problem of this task.
func (it Item) errorsOf(c problem.Code) []string {
	if it.task == nil || c.Task != it.Task {
		return nil
	}
	p, err := problem.New(it.task, c)
	if err != nil {
		return nil
	}
	return errorsOf(p)
}

// errorsOf are the common errors that would show in a problem. Another convention is none.
func errorsOf(p *problem.Problem) []string {
	var names []string
	for _, known := range p.Expected.Errors {
		if !known.Convention {
			names = append(names, known.Name)
		}
	}
	return names
}

// usualOf draws problems to see what comes up in a system of units, or in the task's own
// where it is not set in that one. Situations count where every problem is about one.
func usualOf(t *problem.Task, system machine.System) usual {
	if !t.Allows(system) {
		system = t.Systems[0]
	}
	situations, errors := map[string]int{}, map[string]int{}
	var u usual
	for seed := range uint32(usualTried) {
		p, err := problem.New(t, problem.NewCode(t.Name, problem.NumbersGiven, system, seed, machine.DefaultLathe(system)))
		if err != nil {
			continue // a task that can't be drawn; its own tests say so
		}
		for _, name := range errorsOf(p) {
			if errors[name]++; errors[name] == errorsLeast {
				u.errors = append(u.errors, name)
			}
		}
		situation := p.Values.Situation()
		if situations[situation]++; t.Situations() && situation != "" && situations[situation] == situationsLeast {
			u.situations = append(u.situations, situation)
		}
	}
	for _, name := range u.errors {
		if errors[name] < errorsMostly {
			u.seldom = append(u.seldom, name)
		}
	}
	return u
}
