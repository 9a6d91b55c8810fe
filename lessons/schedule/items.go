package schedule

import (
	"slices"
	"sync"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// Item is a task as the schedule sees it.
type Item struct {
	Task    string
	Stage   problem.Stage
	Gate    bool
	Rule    mastery.Rule
	Minutes float64 // how long one answer takes

	// usual tells what comes up for this learner, which a run must cover. It is asked
	// only for tasks that are answered.
	usual func() usual
	task  *problem.Task
}

// usual are the situations and the wrong roads that come up often enough.
type usual struct{ forms, roads []string }

// rule is the item's rule with what usually comes up.
func (it Item) rule() mastery.Rule {
	r := it.Rule
	if it.usual != nil {
		u := it.usual()
		r.Forms, r.Roads = u.forms, u.roads
	}
	return r
}

// Wants reports whether a problem would bring a run further: it shows a situation or
// gives a chance to a wrong road that the run at hand has not had.
func (it Item) Wants(s record.Summary, p *problem.Problem) bool {
	r, form, roads := it.rule(), p.Values.Situation(), roadsOf(p)
	missing := false
	for _, f := range r.Forms {
		if !slices.ContainsFunc(s.Run, func(a mastery.Answer) bool { return a.Form == f }) {
			if f == form {
				return true
			}
			missing = true
		}
	}
	for _, road := range r.Roads {
		if !slices.ContainsFunc(s.Run, func(a mastery.Answer) bool { return slices.Contains(a.Roads, road) }) {
			if slices.Contains(roads, road) {
				return true
			}
			missing = true
		}
	}
	return !missing
}

// roads are the wrong roads that would have shown in the problem of a code.
func (it Item) roads(code string) []string {
	c, err := problem.ParseCode(code)
	if err != nil || it.task == nil || c.Task != it.Task {
		return nil
	}
	p, err := problem.New(it.task, c)
	if err != nil {
		return nil
	}
	return roadsOf(p)
}

func roadsOf(p *problem.Problem) []string {
	var roads []string
	for _, s := range p.Expected.Errors {
		if !s.Convention {
			roads = append(roads, s.Name)
		}
	}
	return roads
}

// usualOf draws problems to see what comes up in a system of units. Situations count
// where they are an input of every problem.
func usualOf(t *problem.Task, system machine.System, situations bool) usual {
	if !t.Allows(system) {
		system = t.Systems[0]
	}
	seen, roads := map[string]int{}, map[string]int{}
	var u usual
	for seed := range uint32(usualTried) {
		p, err := problem.New(t, problem.NewCode(t.Name, problem.NumbersGiven, system, seed, machine.DefaultLathe(system)))
		if err != nil {
			continue // a task that can't be drawn; its own tests say so
		}
		for _, road := range roadsOf(p) {
			if roads[road]++; roads[road] == roadsLeast {
				u.roads = append(u.roads, road)
			}
		}
		form := p.Values.Situation()
		if seen[form]++; situations && form != "" && seen[form] == formsLeast {
			u.forms = append(u.forms, form)
		}
	}
	return u
}

// ItemOf describes a task for a learner who works in a system of units.
func ItemOf(t *problem.Task, system machine.System) Item {
	it := Item{Task: t.Name, Stage: t.Stage, Gate: t.SafetyCritical, Minutes: typedMinutes, task: t}
	it.Rule = mastery.Rule{Gate: t.SafetyCritical, Choice: t.Kind.Guessable(), OneKey: t.Kind.OneKey()}
	if t.Kind.Guessable() {
		it.Minutes = choiceMinutes
	}
	it.usual = sync.OnceValue(func() usual { return usualOf(t, system, t.Situations()) })
	return it
}
