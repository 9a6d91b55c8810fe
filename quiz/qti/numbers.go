package qti

import (
	"fmt"
	"math"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
)

const response = "RESPONSE"

// Number writes an item with one box for a quantity.
func (d *draft) Number() error { return d.oneNumber(d.pack.Words.Number) }

// Limits writes an item with one box for a size inside limits.
func (d *draft) Limits() error { return d.oneNumber(d.pack.Words.Limits) }

// oneNumber is an item with one box, below a sentence that says what to write.
func (d *draft) oneNumber(sentence string) error {
	p, e := d.Problem, &d.Problem.Expected
	d.ask(response, "single", "float", e.Unit.Fixed(e.Key.X))
	d.pose(d.Words.Question(p))
	d.say(sentence)
	d.box("", response, e.Unit.Name)
	d.unread(response)
	bands := e.Bands()
	for i, b := range bands {
		when := between(response, b.Low*e.Unit.Factor, b.High*e.Unit.Factor)
		if i == len(bands)-1 {
			when = nil
		}
		exact := b.Mark.Verdict == answer.Right || b.Mark.Error != ""
		id := idOf(b.Mark)
		if b.Mark.Verdict == answer.Wrong && e.Far(b.Mark.Response) {
			id = "far-off"
		}
		d.named(id, when, b.Mark, exact)
	}
	return nil
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

// Readings writes an item with a box for each number of a row.
func (d *draft) Readings() error {
	p, a := d.Problem, &d.Problem.Expected
	labels := d.Words.ReadingLabels(p)
	if len(labels) != len(a.Key.Xs) {
		return fmt.Errorf("%s asks for %d readings and has %d labels: name each reading", p.Task.Name, len(a.Key.Xs), len(labels))
	}
	d.pose(d.Words.Question(p))
	d.say(d.pack.Words.Numbers)
	var ids []string
	for i, x := range a.Key.Xs {
		ids = append(ids, response+strconv.Itoa(i+1))
		d.ask(ids[i], "single", "float", a.Unit.Fixed(x))
		d.box(lineNumber(i, labels[i]), ids[i], a.Unit.Name)
	}
	near := func(r answer.Response, tol float64) *node {
		var all []*node
		for i, x := range r.Xs {
			all = append(all, between(ids[i], (x-tol)*a.Unit.Factor, (x+tol)*a.Unit.Factor))
		}
		return allOf(all...)
	}
	d.unread(ids...)
	d.rule(near(a.Key, a.Tolerance), p.MarkResponse(a.Key), true)
	err := d.errorRules(func(r answer.Response) *node { return near(r, a.ErrorTolerance) }, nil)
	d.otherwise()
	return err
}
