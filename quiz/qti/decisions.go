package qti

import (
	"fmt"
	"slices"
	"strconv"

	"scratchpass/quiz/answer"
)

// noneID is the option that none of them fits.
const noneID = "choice-none"

// choiceID is the identifier of an option by its place: a name would tell which it
// is.
func choiceID(i int) string { return "choice-" + strconv.Itoa(i+1) }

// choiceIDs are the identifiers of options, in the order of a response; no options at
// all are the option "none".
func (d *draft) choiceIDs(r answer.Response) []string {
	if len(r.Keys) == 0 {
		return []string{noneID}
	}
	var ids []string
	for _, key := range r.Keys {
		ids = append(ids, choiceID(slices.Index(d.Problem.Expected.Options, key)))
	}
	return ids
}

// offered checks that the key and what the errors choose are options.
func (d *draft) offered() error {
	a := &d.Problem.Expected
	missing := ""
	look := func(r answer.Response) {
		for _, key := range r.Keys {
			if !slices.Contains(a.Options, key) {
				missing = key
			}
		}
	}
	look(a.Key)
	for _, known := range d.Problem.Expected.Errors {
		look(known.Response)
	}
	if missing != "" || len(a.Options) < 2 {
		return fmt.Errorf("%s offers %q and lacks %q: offer every answer", d.Problem.Task.Name, a.Options, missing)
	}
	return nil
}

// interact adds an interaction with the options below its sentence.
func (d *draft) interact(interaction *node, sentence string, options []string, ids []string) {
	interaction.add(leaf("prompt", sentence))
	for i, option := range options {
		interaction.add(leaf("simpleChoice", option, "identifier", ids[i]))
	}
	d.body = append(d.body, interaction)
}

func placeIDs(n int) []string {
	ids := make([]string, n)
	for i := range ids {
		ids[i] = choiceID(i)
	}
	return ids
}

// Choice writes an item with one right option.
func (d *draft) Choice() error {
	p := d.Problem
	if err := d.offered(); err != nil {
		return err
	}
	options := d.Words.Options(p)
	d.ask(response, "single", "identifier", d.choiceIDs(p.Expected.Key)...)
	d.pose(d.Words.Question(p))
	d.interact(el("choiceInteraction", "responseIdentifier", response, "shuffle", "false", "maxChoices", "1"),
		d.pack.Words.Choice, options, placeIDs(len(options)))
	d.unread(response)
	d.rule(match(variable(response), correct(response)), p.MarkResponse(p.Expected.Key), true)
	err := d.errorRules(func(r answer.Response) *node {
		return match(variable(response), value("identifier", d.choiceIDs(r)[0]))
	}, nil)
	d.otherwise()
	return err
}

// Several writes an item where all that fit, and no other, are right.
func (d *draft) Several() error {
	p := d.Problem
	if err := d.offered(); err != nil {
		return err
	}
	options := d.Words.Options(p)
	d.ask(response, "multiple", "identifier", d.choiceIDs(p.Expected.Key)...)
	d.pose(d.Words.Question(p))
	d.interact(el("choiceInteraction", "responseIdentifier", response, "shuffle", "false", "maxChoices", "0"),
		d.pack.Words.Several, append(options, d.pack.Words.None), append(placeIDs(len(options)), noneID))
	d.unread(response)
	d.rule(match(variable(response), correct(response)), p.MarkResponse(p.Expected.Key), true)
	err := d.errorRules(func(r answer.Response) *node {
		return match(variable(response), d.container("multiple", r))
	}, d.onlyFitting)
	d.otherwise()
	return err
}

// onlyFitting is the condition that no option was chosen that does not fit: a part of
// the key. It asks for each of them, because some players lack `contains`.
func (d *draft) onlyFitting() *node {
	a := &d.Problem.Expected
	wrong := []*node{el("member").add(value("identifier", noneID), variable(response))}
	for i, option := range a.Options {
		if !slices.Contains(a.Key.Keys, option) {
			wrong = append(wrong, el("member").add(value("identifier", choiceID(i)), variable(response)))
		}
	}
	return el("not").add(anyOf(wrong...))
}

// Order writes an item whose steps are put in order. Its steps are numbered, because the
// feedback calls them by number. Where steps are free of each other, every order that is
// right is listed: QTI knows of no other way to say so.
func (d *draft) Order() error {
	p := d.Problem
	if err := d.offered(); err != nil {
		return err
	}
	options := d.Words.Options(p)
	for i := range options {
		options[i] = lineNumber(i, options[i])
	}
	d.ask(response, "ordered", "identifier", d.choiceIDs(p.Expected.Key)...)
	d.pose(d.Words.Question(p))
	d.interact(el("orderInteraction", "responseIdentifier", response, "shuffle", "false", "orientation", "vertical"), d.pack.Words.Order, options, placeIDs(len(options)))
	d.unread(response)
	right := []*node{match(variable(response), correct(response))}
	right = append(right, d.orders(p.Expected.SameOrders(p.Expected.Key)[1:])...)
	d.rule(anyOf(right...), p.MarkResponse(p.Expected.Key), true)
	err := d.errorRules(func(r answer.Response) *node { return anyOf(d.orders(p.Expected.SameOrders(r))...) }, nil)
	d.otherwise()
	return err
}

// orders are the conditions that the response is one of some orders.
func (d *draft) orders(all []answer.Response) []*node {
	var nodes []*node
	for _, r := range all {
		nodes = append(nodes, match(variable(response), d.container("ordered", r)))
	}
	return nodes
}

// container is a response as QTI compares it.
func (d *draft) container(cardinality string, r answer.Response) *node {
	n := el(cardinality)
	for _, id := range d.choiceIDs(r) {
		n.add(value("identifier", id))
	}
	return n
}
