package set

import (
	"fmt"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// slot checks one slot and fills in what it leaves out.
func (b *Blueprint) slot(i int, say func(string, ...any)) {
	s := &b.Slots[i]
	where := fmt.Sprintf("slot %d", i+1)
	s.fillIn()
	if _, err := machine.ParseSystem(s.Units); err != nil && s.Units != "" {
		say("%s: %w", where, err)
	}
	if s.Level < 1 || s.Level > 3 {
		say("%s: level %d: give 1, 2 or 3", where, s.Level)
	}
	if s.Points <= 0 || s.Points > mostPoints || s.Points*2 != float64(int(s.Points*2)) {
		say("%s: points %s: give half a point to 100, in halves", where, calc.Shortest(s.Points, 4))
	}
	b.asks(s, where, say)
	if most := b.mostOf(s); s.Count < 1 || s.Count > most {
		say("%s: count %d: give 1 to %d", where, s.Count, most)
	}
	if s.Name != "" && slices.ContainsFunc(b.Slots[:i], func(o Slot) bool { return o.Name == s.Name }) {
		say("%s: a slot above is called %s already", where, calc.Quoted(s.Name))
	}
	b.takes(i, where, say)
}

// mostPoints is the most that a question is worth.
const mostPoints = 100

// fillIn puts in what a slot leaves out.
func (s *Slot) fillIn() {
	if s.Level == 0 {
		s.Level = 1
	}
	if s.Count == 0 {
		s.Count = 1
	}
	s.Points = 1
	if s.Worth != nil {
		s.Points = *s.Worth
	}
}

// asks checks which tasks a slot asks: those of a stage, or some by name.
func (b *Blueprint) asks(s *Slot, where string, say func(string, ...any)) {
	switch {
	case s.Stage != "" && len(s.Tasks) > 0:
		say("%s: give tasks or a stage, not both", where)
	case s.Stage != "":
		if !slices.Contains(problem.Stages, problem.Stage(s.Stage)) && len(b.of.OfStage(problem.Stage(s.Stage))) == 0 {
			say("%s: stage %s: give one of %v", where, calc.Quoted(s.Stage), problem.Stages)
		}
	case len(s.Tasks) == 0:
		say("%s: give tasks or a stage", where)
	}
	for _, name := range s.Tasks {
		t, err := b.of.Find(name)
		switch {
		case err != nil:
			say("%s: %w", where, err)
		case !t.Allows(b.unitsOf(*s)):
			say("%s: %s is not set in %s, only with units: %s", where, name, b.unitsOf(*s), t.Systems[0])
		}
	}
}

// mostOf is how many questions a slot may have: of a stage no more than it has tasks,
// unless each apprentice may get another.
func (b *Blueprint) mostOf(s *Slot) int {
	if own := len(b.choices(*s)); s.Stage != "" && !s.Mix && own > 0 {
		return min(own, mostItems)
	}
	return mostItems
}

// takes checks what a slot takes over from others.
func (b *Blueprint) takes(i int, where string, say func(string, ...any)) {
	s := b.Slots[i]
	if len(s.Takes) > 0 && (len(s.Tasks) != 1 || s.Count != 1) {
		say("%s: a question that takes an answer over has one task and a count of 1", where)
		return
	}
	for input, from := range s.Takes {
		k := slices.IndexFunc(b.Slots[:i], func(o Slot) bool { return o.Name == from && from != "" })
		switch {
		case k < 0:
			say("%s: takes %s from %s: no slot above has that name", where, input, calc.Quoted(from))
			continue
		case len(b.Slots[k].Tasks) != 1 || b.Slots[k].Count != 1:
			say("%s: takes %s from %s, which must have one task and a count of 1", where, input, calc.Quoted(from))
		case b.unitsOf(b.Slots[k]) != b.unitsOf(s):
			say("%s: takes %s from %s, whose answer is in %s and not in %s: give both the same units", where, input, calc.Quoted(from), b.unitsOf(b.Slots[k]), b.unitsOf(s))
		case !b.asksNumber(b.Slots[k].Tasks[0]):
			say("%s: takes %s from %s, whose answer is no number", where, input, calc.Quoted(from))
		}
		t, err := b.of.Find(s.Tasks[0])
		if err != nil {
			continue // said above
		}
		b.fits(t, input, b.Slots[k], where, say)
		inputs := t.NumberInputs()
		if !slices.ContainsFunc(inputs, func(in problem.Input) bool { return in.Name == input }) {
			var names []string
			for _, in := range inputs {
				names = append(names, in.Name)
			}
			say("%s: %s has no input %s to take over; it has %s", where, t.Name, calc.Quoted(input), strings.Join(names, ", "))
		}
	}
}

// named are the symbols of what has one name everywhere: a pitch is taken from a question
// that asks for a pitch, not for any length.
var named = []string{"P", "n"}

// fits says when an input is a pitch or a number of threads and the answer it is taken
// from is something else.
func (b *Blueprint) fits(t *problem.Task, input string, from Slot, where string, say func(string, ...any)) {
	i := slices.IndexFunc(t.Inputs, func(in problem.Input) bool { return in.Name == input })
	if i < 0 || !slices.Contains(named, t.Inputs[i].Symbol) || len(from.Tasks) != 1 {
		return
	}
	p, ok := b.any(from)
	if !ok || len(p.Working.Steps) == 0 {
		return
	}
	if asked := p.Working.Steps[len(p.Working.Steps)-1].Symbol; asked != t.Inputs[i].Symbol {
		say("%s: takes %s from %s, which asks for something else (%s, not %s)", where, input, calc.Quoted(from.Name), asked, t.Inputs[i].Symbol)
	}
}

// any is some problem of a slot that has one task.
func (b *Blueprint) any(s Slot) (*problem.Problem, bool) {
	t, err := b.of.Find(s.Tasks[0])
	if err != nil {
		return nil, false
	}
	p, err := problem.New(t, problem.NewCode(t.Name, problem.NumbersGiven, b.unitsOf(s), 1, b.latheOf(s)))
	return p, err == nil
}

// asksNumber reports whether the answer to a task is one number.
func (b *Blueprint) asksNumber(task string) bool {
	t, err := b.of.Find(task)
	return err != nil || t.Kind.Takeable() // one that is not there is said elsewhere
}
