package qti

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz"
)

// whole is an answer that is offered as one option.
type whole struct {
	shown string
	reply quiz.Reply
}

// fewest is how many options a single choice has at least.
const fewest = 3

// wholeAnswers is an item of any kind as one choice among whole answers.
func (d *draft) wholeAnswers() error {
	p := d.Problem
	asPrinted := func(r quiz.Reply) whole {
		r = d.printed(r)
		return whole{p.Shown(r), r}
	}
	all := []whole{asPrinted(p.Answer.Key)}
	offer := func(r quiz.Reply) {
		w := asPrinted(r)
		taken := slices.ContainsFunc(all, func(o whole) bool { return o.shown == w.shown })
		if !taken && !p.MarkReply(w.reply).Correct() {
			all = append(all, w)
		}
	}
	p.SlipReplies(func(_ *quiz.Slip, r quiz.Reply) { offer(r) })
	for _, r := range d.others() {
		if len(all) < fewest {
			offer(r)
		}
	}
	if len(all) < fewest {
		return fmt.Errorf("%s has only %d answers that differ as printed: a choice needs %d", p.Task.Name, len(all), fewest)
	}
	slices.SortFunc(all, func(x, y whole) int {
		return cmp.Or(cmp.Compare(x.reply.X, y.reply.X), strings.Compare(x.shown, y.shown))
	})
	d.chooseWhole(all)
	return nil
}

// chooseWhole asks for one of the answers. The question keeps its numbered lines,
// which the answers call by number.
func (d *draft) chooseWhole(all []whole) {
	question, _ := d.Words.Ask(d.Problem)
	d.say(question)
	var options []string
	right := 0
	for i, w := range all {
		options = append(options, w.shown)
		if d.Problem.Answer.Right(w.reply) {
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
				d.rule(match(variable(response), value("identifier", choiceID(i))), d.Problem.MarkReply(w.reply), true)
			}
		}
	}
}

// others are further answers, for a problem with too few known wrong roads.
func (d *draft) others() []quiz.Reply {
	a := &d.Problem.Answer
	var all []quiz.Reply
	switch a.Kind.Name() {
	case "quantity":
		for _, times := range []float64{0.5, 2, 1.5, 3} {
			shown := a.Key.X * times * a.Unit.Factor
			if counted := a.Unit.Count || a.Unit.Places == 0; !counted || calc.Within(shown, math.Round(shown), 1e-9) {
				all = append(all, quiz.X(a.Key.X*times))
			}
		}
	case "several":
		var odd, even, rest []string
		for i, option := range a.Options {
			if i%2 == 0 {
				odd = append(odd, option)
			} else {
				even = append(even, option)
			}
			if !slices.Contains(a.Key.Keys, option) {
				rest = append(rest, option)
			}
		}
		all = append(all, quiz.Keys(a.Options...), quiz.Keys(), quiz.Keys(odd...), quiz.Keys(even...), quiz.Keys(rest...))
	}
	return all
}
