package qti

import (
	"fmt"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
)

// Designation writes an item that takes a designation apart: a box for each number, a
// list for each word. Words are picked from a list, so that nobody is wrong for writing
// "outside".
func (d *draft) Designation() error {
	p, key := d.Problem, d.Problem.Expected.Key
	d.pose(d.Words.Question(p))
	d.say(d.pack.Words.Parts)
	var ids []string
	for i, f := range key.Fields {
		label := d.pack.Words.Fields[f[0]]
		if clean(label) == "" {
			return fmt.Errorf("words: Fields has no label for %q: give one", f[0])
		}
		ids = append(ids, response+strconv.Itoa(i+1))
		words := answer.FieldWords(f[0])
		if words == nil {
			d.ask(ids[i], "single", "float", f[1])
			d.box(label, ids[i], "")
			continue
		}
		d.ask(ids[i], "single", "identifier", f[1])
		list := el("inlineChoiceInteraction", "responseIdentifier", ids[i], "shuffle", "false")
		for _, w := range words {
			said := w
			if word, ok := d.Words.Phrases["word-"+w]; ok { // the trade's word; the identifier keeps its name
				said = word
			}
			list.add(leaf("inlineChoice", said, "identifier", w))
		}
		d.body = append(d.body, el("p").add(text(label+" "), list))
	}
	var bad error
	fits := func(r answer.Response) *node {
		var all []*node
		for i, f := range r.Fields {
			if answer.FieldWords(f[0]) != nil {
				all = append(all, match(variable(ids[i]), value("identifier", f[1])))
				continue
			}
			x, err := strconv.ParseFloat(f[1], 64)
			if err != nil {
				bad = fmt.Errorf("%s: the part %s is %q: give a number", p.Task.Name, f[0], f[1])
			}
			all = append(all, roundsTo(ids[i], x)...)
		}
		return allOf(all...)
	}
	d.unread(ids...)
	d.rule(fits(key), p.MarkResponse(key), true)
	if err := d.errorRules(fits, nil); err != nil {
		return err
	}
	d.otherwise()
	return bad
}

// roundsTo is the condition that a number is x at four decimals, as the parts of a
// designation are read.
func roundsTo(id string, x float64) []*node {
	const half = 0.00005
	end := func(x float64) *node { return value("float", calc.Shortest(x, edgePlaces)) }
	return []*node{el("gte").add(variable(id), end(x-half)), el("lt").add(variable(id), end(x+half))}
}
