package qti

import (
	"fmt"
	"math"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz"
)

const response = "RESPONSE"

// number is an item with one box: a quantity, or a size inside limits.
func (d *draft) number() {
	p, a := d.Problem, &d.Problem.Answer
	d.ask(response, "single", "float", a.Unit.Fixed(a.Key.X))
	d.say(d.Words.Question(p))
	if a.Kind.Name() == "limits" {
		d.say(d.pack.Words.Limits)
	} else {
		d.say(d.pack.Words.Number)
	}
	d.box("", response, a.Unit.Name)
	d.unread(response)
	bands := p.Bands()
	for i, b := range bands {
		when := between(response, b.Low, b.High)
		if i == len(bands)-1 {
			when = nil
		}
		exact := b.Mark.Verdict == quiz.Right || b.Mark.Slip != ""
		id := idOf(b.Mark)
		if b.Far && b.Mark.Verdict == quiz.Wrong {
			id = "far-off"
		}
		d.named(id, when, b.Mark, exact)
	}
}

// box adds a line with a box to write in, its label in front and the unit behind.
func (d *draft) box(label, id, unit string) {
	line := el("p")
	if label != "" {
		line.add(text(label + " "))
	}
	line.add(el("textEntryInteraction", "responseIdentifier", id, "expectedLength", "10"))
	if unit != "" {
		line.add(text(" " + unit))
	}
	d.body = append(d.body, line)
}

// edgePlaces is how exact the ends of a range are printed. What a binary sum left
// behind the twelfth decimal is dropped, so that an answer just on the edge is inside.
const edgePlaces = 12

// between is the condition that a number lies in a range, both ends included. The
// ends are compared by themselves, because some players ignore the tolerance of
// `equal`.
func between(id string, low, high float64) *node {
	var ends []*node
	if !math.IsInf(low, -1) {
		ends = append(ends, el("gte").add(variable(id), value("float", calc.Shortest(low, edgePlaces))))
	}
	if !math.IsInf(high, 1) {
		ends = append(ends, el("lte").add(variable(id), value("float", calc.Shortest(high, edgePlaces))))
	}
	return allOf(ends...)
}

// row is an item with a box for each number of a row.
func (d *draft) row() error {
	p, a := d.Problem, &d.Problem.Answer
	labels := d.Words.ReadingLabels(p)
	if len(labels) != len(a.Key.Xs) {
		return fmt.Errorf("%s asks for %d readings and has %d labels: name each reading", p.Task.Name, len(a.Key.Xs), len(labels))
	}
	d.say(d.Words.Question(p))
	d.say(d.pack.Words.Numbers)
	var ids []string
	for i, x := range a.Key.Xs {
		ids = append(ids, response+strconv.Itoa(i+1))
		d.ask(ids[i], "single", "float", a.Unit.Fixed(x))
		d.box(lineNumber(i, labels[i]), ids[i], a.Unit.Name)
	}
	near := func(r quiz.Reply, tol float64) *node {
		var all []*node
		for i, x := range r.Xs {
			all = append(all, between(ids[i], (x-tol)*a.Unit.Factor, (x+tol)*a.Unit.Factor))
		}
		return allOf(all...)
	}
	d.unread(ids...)
	d.rule(near(a.Key, a.Tol), p.MarkReply(a.Key), true)
	err := d.slipRules(func(r quiz.Reply) *node { return near(r, a.SlipTol) }, nil)
	d.otherwise()
	return err
}
