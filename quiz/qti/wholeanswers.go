package qti

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scratchpass/quiz/answer"
)

// whole is an answer that is offered as one option.
type whole struct {
	shown    string
	response answer.Response
}

// fewest is how many options a single choice has at least.
const fewest = 3

// wholeAnswers is an item of any kind as one choice among whole answers.
func (d *draft) wholeAnswers() error {
	all, err := d.wholes()
	if err != nil {
		return err
	}
	d.chooseWhole(all)
	return nil
}

// wholes are the answers that are offered, in the order they are offered in.
func (d *draft) wholes() ([]whole, error) {
	p := d.Problem
	asPrinted := func(r answer.Response) whole {
		r = d.printed(r)
		return whole{d.Words.Numbered(p, r), r}
	}
	all := []whole{asPrinted(p.Expected.Key)}
	offer := func(r answer.Response) {
		w := asPrinted(r)
		taken := slices.ContainsFunc(all, func(o whole) bool { return o.shown == w.shown })
		if !taken && !p.MarkResponse(w.response).Correct() {
			all = append(all, w)
		}
	}
	for _, known := range p.Expected.Errors {
		offer(known.Response)
	}
	for _, r := range p.Task.Kind.Others(&p.Expected) {
		if len(all) < fewest {
			offer(r)
		}
	}
	if len(all) < fewest {
		return nil, fmt.Errorf("%s has only %d answers that differ as printed: a choice needs %d", p.Task.Name, len(all), fewest)
	}
	slices.SortFunc(all, func(x, y whole) int {
		return cmp.Or(cmp.Compare(x.response.X, y.response.X), strings.Compare(x.shown, y.shown))
	})
	return all, nil
}

// chooseWhole asks for one of the answers. The question keeps its numbered lines,
// which the answers call by number.
func (d *draft) chooseWhole(all []whole) {
	question, _ := d.Words.Ask(d.Problem)
	d.pose(question)
	var options []string
	right := 0
	for i, w := range all {
		options = append(options, w.shown)
		if d.Problem.Expected.Right(w.response) {
			right = i
		}
	}
	d.ask(response, "single", "identifier", choiceID(right))
	d.interact(el("choiceInteraction", "responseIdentifier", response, "shuffle", "false", "maxChoices", "1"),
		d.pack.Words.Choice, options, placeIDs(len(options)))
	d.unread(response)
	for _, first := range []bool{true, false} { // the key first, as everywhere
		for i, w := range all {
			if first == (i == right) {
				d.rule(match(variable(response), value("identifier", choiceID(i))), d.Problem.MarkResponse(w.response), true)
			}
		}
	}
}
