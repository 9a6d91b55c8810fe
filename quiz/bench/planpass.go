package bench

import (
	"errors"
	"fmt"

	"scratchpass/calc"
)

// OnePass is one pass of a card, to be made by itself: where the lathe stands before it, and how
// it goes.
type OnePass struct {
	Plan  Plan
	N     int // its number on the card, from 1; 0 for the first one with the set-up before it
	Of    int // how many passes the card has up to the first try of the fit
	Step  PlanStep
	Start Bench   // nothing has gone wrong there
	Moves []Event // what the card comes to, each a single move of the hand
}

// ErrNoPasses says that a card has no passes: the job can't be cut as it stands.
var ErrNoPasses = errors.New("the card of this job has no passes; scratchpass dryrun plan says what is in the way")

// Pass is the n-th pass of the card, up to the first try of the fit: what comes after that is
// done as the fit says. 0 is the first pass with the whole set-up before it, from the work as it
// is clamped.
func (p Plan) Pass(n int) (OnePass, error) {
	if !p.Passes() {
		return OnePass{}, ErrNoPasses
	}
	o := OnePass{Plan: p, N: n}
	at, seen := -1, 0 // the step that is meant
	for i, s := range p.Steps {
		if s.Kind == "test" {
			break
		}
		if s.Kind != "next" {
			if seen++; seen == max(n, 1) {
				at = i
			}
		}
	}
	if o.Of = seen; n < 0 || at < 0 {
		return OnePass{}, &calc.InputError{What: "pass", Got: fmt.Sprint(n), Want: fmt.Sprintf("1 to %d of the card, or 0 for the set-up and the first one", seen)}
	}
	o.Step = p.Steps[at]
	before, moves := p.around(at)
	if n == 0 {
		before, moves = nil, append(before, moves...)
	}
	o.Start = Play(p.Job, false, before)
	o.Moves = o.byHand(moves)
	return o, nil
}

// around are the moves before a step of the card, and those of the step by hand. The way from
// start to start belongs to the pass that comes after it.
func (p Plan) around(at int) (before, moves []Event) {
	pl := player{p: p, start: 1}
	pl.deeper, pl.away = p.Job.Ways()
	before = p.setUp()
	for i, s := range p.Steps[:at] {
		if s.Kind == "next" && i == at-1 {
			moves = pl.moves(s)
		} else {
			before = append(before, pl.moves(s)...)
		}
	}
	s := p.Steps[at]
	return before, append(moves, pl.byHand(s, pl.straight, s.Total-pl.total)...)
}

// byHand are moves up to the end of the pass, without those that change nothing: the spindle may
// turn already.
func (o OnePass) byHand(moves []Event) (all []Event) {
	b := o.Start
	deeper, _ := o.Plan.Job.Ways()
	for _, e := range moves {
		if e.Verb == "start" && b.Turn > 0 || e.Verb == "reverse" && b.Turn < 0 {
			continue
		}
		if e.Verb == "cross" && e.Word == deeper && b.AtTouch { // as it is read off the dial
			e = length("cross", "to", o.Step.Cross)
		}
		b, _ = b.Step(e)
		all = append(all, e)
		if o.Done(b) {
			break
		}
	}
	return all
}

// Takes reports whether a move may be made in a pass that is made by hand: whole passes, and
// calling the part done, are none of it.
func (o OnePass) Takes(e Event) bool {
	_, _, whole := e.WholePass()
	return !whole && e.Verb != "done"
}

// Offers are the moves that a person might think of now, good and bad.
func (o OnePass) Offers(b Bench) []Offer {
	var all []Offer
	for _, of := range b.Offers() {
		if o.Takes(Event{Verb: of.Verb}) {
			all = append(all, of)
		}
	}
	return all
}

// Done reports whether the pass has been made: a cut was taken since the start, and the tool is
// out of the metal and back where the next one begins.
func (o OnePass) Done(b Bench) bool {
	return !b.Over && len(b.Passes) > len(o.Start.Passes) && b.AtStart() && b.Clear()
}

// Ruined reports whether the part is scrap, or something broke: nothing mends that pass.
func (o OnePass) Ruined(b Bench) bool { return b.Over || len(b.Spoiled) > len(o.Start.Spoiled) }

// Made are the mistakes since the start, their moves counted from there.
func (o OnePass) Made(b Bench) []Mistake {
	var all []Mistake
	for _, m := range b.Mistakes[len(o.Start.Mistakes):] {
		m.Event -= len(o.Start.Log)
		all = append(all, m)
	}
	return all
}

// AsDeep reports whether the last pass was set as deep as the card has it, to half a line of the
// dial that it was fed by.
func (o OnePass) AsDeep(b Bench) bool {
	n := len(b.Passes)
	if n == len(o.Start.Passes) {
		return false
	}
	dial, off := o.Plan.Job.Lathe.Compound, b.Passes[n-1].Compound-o.Step.Total
	if o.Plan.StraightIn() {
		dial, off = o.Plan.Job.Lathe.Cross, b.Passes[n-1].Straight-o.Step.Straight
	}
	return max(off, -off) <= dial.Division.Times(0.5)
}
