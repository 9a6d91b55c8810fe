package own

import (
	"cmp"
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"scratchpass/calc"
	"scratchpass/quiz/arithmetic"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// drawn is what an input is drawn from: a range in steps, or a list.
type drawn struct {
	name      string // its letter
	called    string // the name of the task's input
	unit      machine.Unit
	low, step float64
	n         int // numbers of the range
	list      []float64
}

// pick draws one number, in the unit of the input.
func (in *drawn) pick(d *problem.Draw) float64 {
	if len(in.list) > 0 {
		return in.list[d.IntN(len(in.list))]
	}
	return calc.Round(in.low+float64(d.IntN(in.n))*in.step, decimalsKept)
}

// wider is how many times further someone's own numbers may lie from nothing than those that
// are drawn.
const wider = 10

// decimalsKept is how many decimals a number that was drawn keeps: what binary fractions add
// is behind them.
const decimalsKept = 9

// inputs reads what is drawn. Its order is that of the letters: a draw must not hang on
// where a line stands in the file.
func (r *reader) inputs() {
	if len(r.q.Inputs) > mostInputs {
		r.say("inputs", "inputs: there are %d: give at most %d", len(r.q.Inputs), mostInputs)
	}
	var units []machine.Unit
	for _, name := range slices.Sorted(maps.Keys(r.q.Inputs)) {
		if err := arithmetic.CheckSymbol(name); err != nil {
			r.say(name, "inputs: %v", err)
			continue
		}
		in := drawn{name: name}
		low, high := r.numbers(name, &in)
		in.unit = r.unit(name, r.q.Inputs[name].Unit, nil)
		in.unit.Given = r.shown(name, in.unit)
		if strings.TrimSpace(r.q.Inputs[name].Means) == "" {
			r.say(name, "the input %s: means is missing: say what the letter stands for", name)
		}
		in.called = r.called(name)
		units = append(units, in.unit)
		r.ranges = append(r.ranges, in)
		r.task.Inputs = append(r.task.Inputs, problem.Input{Name: in.called, Symbol: name, Type: inputType(in.unit),
			Low: min(low*wider, 0) / in.unit.Factor, High: max(high*wider, 0) / in.unit.Factor, In: &in.unit})
	}
	written := r.q.InputsAsWritten()
	slices.SortStableFunc(r.task.Inputs, func(a, b problem.Input) int { // as they are shown; the draws keep the order of the letters
		return cmp.Compare(slices.Index(written, a.Symbol), slices.Index(written, b.Symbol))
	})
	r.task.Systems = systems(units)
	r.task.Draw = r.draw
}

// shown is with how many decimals an input is told, and one more, as a unit has it. A length
// has as many as the numbers that may be drawn; all else shows what it has.
func (r *reader) shown(name string, u machine.Unit) int {
	q := r.q.Inputs[name]
	has := 0
	for _, x := range slices.Concat(q.List, given(q.From), given(q.Step)) {
		_, after, _ := strings.Cut(calc.Shortest(x, decimalsKept), ".")
		has = max(has, len(after))
	}
	switch {
	case q.Decimals == nil && (u.Name == machine.InchUnit.Name || u.Name == machine.MMUnit.Name):
		return has + 1
	case q.Decimals == nil:
		return 0
	case *q.Decimals < has || *q.Decimals > decimalsKept:
		r.say(name, "the input %s: decimals %d: its numbers have %d, so give %d to %d", name, *q.Decimals, has, has, decimalsKept)
		return 0
	}
	return *q.Decimals + 1
}

func given(x *float64) []float64 {
	if x == nil {
		return nil
	}
	return []float64{*x}
}

// calledForm is what drawings, work and blueprints may call an input.
var calledForm = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

// options are words that mean something else on the command line of work.
var options = []string{"as-of", "content", "help", "json", "lathe", "learner", "plain", "record", "seed", "units"}

// called is the name of an input: its letter, or what the file says.
func (r *reader) called(letter string) string {
	name := cmp.Or(r.q.Inputs[letter].Name, letter)
	switch {
	case name != letter && (!calledForm.MatchString(name) || len(name) > mostUnit):
		r.say(letter, "the input %s: name %s: give small letters and hyphens, such as pitch", letter, calc.Quoted(name))
	case slices.Contains(options, name):
		r.say(letter, "the input %s: %s is an option of the program: choose another name", letter, name)
	case slices.ContainsFunc(r.ranges, func(o drawn) bool { return o.called == name }):
		r.say(letter, "the input %s: another one is called %s already", letter, name)
	}
	return name
}

// numbers reads the range or the list of an input.
func (r *reader) numbers(name string, in *drawn) (low, high float64) {
	q := r.q.Inputs[name]
	ranged := q.From != nil || q.To != nil || q.Step != nil
	switch {
	case ranged == (len(q.List) > 0):
		r.say(name, "the input %s: give from, to and step, or a list", name)
		return 0, 0
	case !ranged:
		if len(q.List) > mostListed {
			r.say(name, "the input %s: the list has %d numbers: give at most %d", name, len(q.List), mostListed)
		}
		if slices.ContainsFunc(q.List, unfit) {
			r.say(name, "the input %s: can't use a number of its list: give plain numbers", name)
		}
		in.list = q.List
		return slices.Min(q.List), slices.Max(q.List)
	case q.From == nil || q.To == nil || q.Step == nil:
		r.say(name, "the input %s: a range has from, to and step", name)
		return 0, 0
	}
	from, to, step := *q.From, *q.To, *q.Step
	if unfit(from) || unfit(to) || unfit(step) || to <= from || step <= 0 {
		r.say(name, "the input %s: a range goes from a number up to a larger one, in steps above 0", name)
		return 0, 0
	}
	in.low, in.step = from, step
	steps := math.Floor((to-from)/step + 1e-6)
	if steps < 1 || steps >= mostDraws {
		r.say(name, "the input %s: the range has %.0f numbers: give 2 to %d", name, steps+1, mostDraws)
		return 0, 0
	}
	in.n = int(steps) + 1
	return from, calc.Round(from+steps*step, decimalsKept)
}

// unfit reports whether a number is none that a question can have.
func unfit(x float64) bool { return math.IsNaN(x) || math.Abs(x) > 1e9 }

// draw draws all inputs.
func (r *reader) draw(d *problem.Draw) problem.Values {
	v := d.Values()
	for i := range r.ranges {
		in := &r.ranges[i]
		v.Set(in.called, in.pick(d)/in.unit.Factor)
	}
	return v
}

// mostUnit is the longest name of a unit, in letters.
const mostUnit = 20

// mostDecimals is how many decimals an answer has at most.
const mostDecimals = 6

// usual is how units of the trade are shown.
var usual = []machine.Unit{machine.InchUnit, machine.MMUnit, machine.DegreeUnit, machine.TPIUnit, machine.RPMUnit}

// unit is the unit of that name; decimals, where they are told, are those of an answer.
func (r *reader) unit(where, name string, decimals *int) machine.Unit {
	u := machine.Unit{Name: name, Factor: 1, Places: machine.PlainUnit.Places}
	if i := slices.IndexFunc(usual, func(one machine.Unit) bool { return strings.EqualFold(one.Name, name) }); i >= 0 {
		u = usual[i]
	}
	if utf8.RuneCountInString(name) > mostUnit || strings.ContainsAny(name, "\n\t0123456789") {
		r.say(where, "unit %s: give a short name without figures, such as in, mm, deg, TPI, rpm or bars", calc.Quoted(name))
	}
	if decimals != nil {
		if *decimals < 0 || *decimals > mostDecimals {
			r.say(where, "decimals %d: give 0 to %d", *decimals, mostDecimals)
			return u
		}
		u.Places = *decimals
	}
	return u
}

// inputType is how a number in the unit is read when someone types it.
func inputType(u machine.Unit) problem.InputType {
	switch u.Name {
	case machine.InchUnit.Name, machine.MMUnit.Name:
		return problem.InputLength
	case machine.DegreeUnit.Name:
		return problem.InputAngle
	case machine.TPIUnit.Name:
		return problem.InputTPI
	}
	return problem.InputPlain
}
