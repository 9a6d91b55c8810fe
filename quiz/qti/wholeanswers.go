package qti

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"

	"scratchpass/quiz/answer"
)

// whole is an answer that is offered as one option.
type whole struct {
	shown    string
	response answer.Response
}

// How many options a single choice has: at least so many, of a number so many where its
// errors or their factors give them, and at most so many.
const (
	fewest      = 3
	usualWholes = 4
	mostWholes  = 5
)

// wholeAnswers is an item of any kind as one choice among whole answers.
func (d *draft) wholeAnswers() error {
	all, err := d.wholes()
	if err != nil {
		return err
	}
	d.chooseWhole(all)
	return nil
}

// wholes are the answers that are offered, in the order they are offered in. It hangs on the
// problem alone: what comes back is read by it. Its place tells nothing of which is right,
// and of numbers neither does which is larger.
func (d *draft) wholes() ([]whole, error) {
	p := d.Problem
	key := d.whole(p.Expected.Key)
	known := []whole{key}
	for _, k := range p.Expected.Errors {
		known = d.offer(known, k.Response)
	}
	from := len(known)
	others := known
	for _, r := range p.Task.Kind.Others(&p.Expected) {
		others = d.offer(others, r)
	}
	if len(others) < fewest {
		return nil, fmt.Errorf("%s has only %d answers that differ as printed: a choice needs %d", p.Task.Name, len(others), fewest)
	}
	chance := chanceOf(p.Code.String() + " " + key.shown)
	if p.Task.Kind.OneNumber() {
		shuffled(chance, others[1:from])
		shuffled(chance, others[from:])
		return among(chance, others, min(max(from, usualWholes), mostWholes)), nil
	}
	all := others[:max(from, min(fewest, len(others)))]
	shuffled(chance, all)
	return all, nil
}

// whole is a response as it is offered.
func (d *draft) whole(r answer.Response) whole {
	r = d.printed(r)
	return whole{d.Words.Numbered(d.Problem, r), r}
}

// offer adds a wrong answer that is not there yet.
func (d *draft) offer(all []whole, r answer.Response) []whole {
	w := d.whole(r)
	if slices.ContainsFunc(all, func(o whole) bool { return o.shown == w.shown }) || d.Problem.MarkResponse(w.response).Correct() {
		return all
	}
	return append(all, w)
}

// among takes n of some numbers, the right one first among them, and sorts them by size. How
// many of them are smaller than the right one is drawn, each number as often as another; what
// stands in front is taken first. Where there are too few on a side, any are taken, and the
// right one still stands at the place that was drawn.
func among(chance *rand.PCG, all []whole, n int) []whole {
	var smaller, larger []whole
	for _, w := range all[1:] {
		if w.response.X < all[0].response.X {
			smaller = append(smaller, w)
		} else {
			larger = append(larger, w)
		}
	}
	n = min(n, len(all))
	below := intN(chance, n)
	if len(smaller) < below || len(larger) < n-1-below {
		taken := slices.Clone(all[1:n])
		shuffled(chance, taken)
		return slices.Insert(taken, below, all[0])
	}
	taken := slices.Concat(all[:1], smaller[:below], larger[:n-1-below])
	slices.SortFunc(taken, func(x, y whole) int { return cmp.Compare(x.response.X, y.response.X) })
	return taken
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
