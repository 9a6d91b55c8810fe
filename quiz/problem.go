package quiz

import (
	"fmt"
	"math"
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Problem is a task with numbers.
type Problem struct {
	Task    *Task
	Code    Code
	Lathe   machine.Lathe
	Values  Values
	Working Working
	Answer  Answer

	slips     []slipReply
	ambiguous bool // see Ambiguous
}

// slipReply is what a slip gives in this problem.
type slipReply struct {
	slip  *Slip
	reply Reply
}

// mostDraws is how often a task is asked for other numbers. A task whose draws are
// so often ambiguous is badly made; the tests over all tasks find it.
const mostDraws = 400

// Make makes the problem of a code.
func Make(t *Task, c Code) (*Problem, error) {
	if !t.Allows(c.System) {
		return nil, fmt.Errorf("%s is not set in %s: give --units %s", t.Name, c.System, t.Systems[0])
	}
	lathe, err := c.lathe()
	if err != nil {
		return nil, err
	}
	d := &Draw{Level: c.Level, System: c.System, Lathe: lathe, inputs: t.Inputs, source: seeded(c)}
	for range mostDraws {
		p := &Problem{Task: t, Code: c, Lathe: lathe, Values: t.Draw(d)}
		if p.Values.inputs == nil { // the draw gave up on these numbers
			continue
		}
		if p.work() != nil || !p.unambiguous() {
			continue
		}
		if p.Answer.Options == nil {
			p.offer(d)
		}
		return p, nil
	}
	return nil, fmt.Errorf("%s finds no numbers that fit the lathe of %s", t.Name, calc.Quoted(c.String()))
}

// Worked is the problem of someone's own numbers: it has a working and slips, no
// code, and is never thrown away for being ambiguous.
func Worked(t *Task, v Values, lathe machine.Lathe) (*Problem, error) {
	if err := v.Check(); err != nil {
		return nil, err
	}
	p := &Problem{Task: t, Lathe: lathe, Values: v}
	if err := p.work(); err != nil {
		return nil, err
	}
	p.dropCoinciding()
	p.unambiguous() // for the tolerances
	if p.Answer.Options == nil {
		p.Answer.Options = p.optionKeys()
	}
	return p, nil
}

// dropCoinciding leaves out the slips that with these numbers give the right answer:
// they are no wrong roads here.
func (p *Problem) dropCoinciding() {
	p.Answer.Tol = p.Task.Tol.of(&p.Answer) * 0.5
	p.slips = slices.DeleteFunc(p.slips, func(s slipReply) bool { return p.Answer.Right(s.reply) })
}

// work fills in the working, the answer and what the slips give.
func (p *Problem) work() error {
	w, err := p.Task.Work(p.Values)
	if err != nil {
		return err
	}
	p.Working, p.Answer = w, w.Answer
	p.Answer.Scrap, p.Answer.NoMore = p.Task.Scrap, p.Task.Tol.NoMore
	p.slips = make([]slipReply, 0, len(p.Task.Slips))
	for i := range p.Task.Slips {
		s := &p.Task.Slips[i]
		if r := s.reply(p.Values); !r.None {
			p.slips = append(p.slips, slipReply{s, r})
		}
	}
	return nil
}

// unambiguous sets the tolerances and reports whether key and slips are far
// enough apart: no answer near one may be taken for another, and no tolerance may
// take up more than 40 % of the gap to its neighbour.
func (p *Problem) unambiguous() bool {
	a := &p.Answer
	switch a.Kind.(type) {
	case quantity, row, limits:
		return p.spread()
	}
	for i, s := range p.slips {
		if a.Right(s.reply) {
			return false
		}
		for _, other := range p.slips[:i] {
			if !twins(s.slip, other.slip) && a.Kind.Same(a, s.reply, other.reply, 0) {
				return false
			}
		}
	}
	return len(p.slips) > 0
}

func twins(a, b *Slip) bool { return a.Twin == b.Name || b.Twin == a.Name }

// slipShare is how much of the tolerance of a right answer counts for naming a slip.
// To name a road that no one took is worse than to say that it can't be told.
const slipShare = 0.8

// spread is unambiguous for numbers.
func (p *Problem) spread() bool {
	a := &p.Answer
	base := p.Task.Tol.of(a)
	shown := math.Pow10(-a.Unit.Places) / a.Unit.Factor // one unit of the last place
	least := max(base*0.3, shown*0.6)
	toKey, apart := math.Inf(1), math.Inf(1)
	for i, s := range p.slips {
		gap := p.gapToKey(s.reply)
		toKey = min(toKey, gap)
		for _, other := range p.slips[:i] {
			if !twins(s.slip, other.slip) {
				apart = min(apart, distance(s.reply, other.reply))
			}
		}
	}
	a.Tol = min(base, 0.4*toKey)
	a.SlipTol = min(base*slipShare, 0.4*toKey, 0.4*apart)
	if a.Tol < least || a.SlipTol < least {
		a.Tol, a.SlipTol = max(a.Tol, shown*0.6), max(a.SlipTol, shown*0.6)
		return false
	}
	return !p.onRoundingEdge()
}

// gapToKey is how far a slip's number is from being right.
func (p *Problem) gapToKey(r Reply) float64 {
	if _, ok := p.Answer.Kind.(limits); ok {
		return max(p.Answer.Low-r.X, r.X-p.Answer.High)
	}
	return distance(r, p.Answer.Key)
}

// distance is how far two replies are apart: in a row, by the reading that tells
// them apart best.
func distance(x, y Reply) float64 {
	if x.Xs == nil {
		return math.Abs(x.X - y.X)
	}
	most := 0.0
	for i := range min(len(x.Xs), len(y.Xs)) {
		most = max(most, math.Abs(x.Xs[i]-y.Xs[i]))
	}
	return most
}

// onRoundingEdge reports whether a printed step could come out differently on a
// calculator that was fed the printed numbers before it.
func (p *Problem) onRoundingEdge() bool {
	for _, s := range p.Working.Steps {
		if s.Final && calc.NearRoundingEdge(s.X*s.Unit.Factor, s.Unit.Places, 0.04) {
			return true
		}
	}
	return false
}

// offer puts the options of a decision in a drawn order.
func (p *Problem) offer(d *Draw) {
	switch p.Answer.Kind.(type) {
	case choice:
		p.Answer.Options = d.Shuffle(p.optionKeys())
	case order:
		p.Answer.Options = d.Shuffle(p.Answer.Key.Keys)
		if slices.Equal(p.Answer.Options, p.Answer.Key.Keys) { // never hand out the key
			p.Answer.Options[0], p.Answer.Options[1] = p.Answer.Options[1], p.Answer.Options[0]
		}
	}
}

// optionKeys are the options of a decision: the right one and the slips.
func (p *Problem) optionKeys() []string {
	switch p.Answer.Kind.(type) {
	case choice:
		keys := []string{p.Answer.Key.Keys[0]}
		for _, s := range p.slips {
			keys = append(keys, s.reply.Keys[0])
		}
		slices.Sort(keys)
		return slices.Compact(keys)
	case order:
		return slices.Sorted(slices.Values(p.Answer.Key.Keys))
	}
	return nil
}

// SlipReplies returns what each slip gives, by name, in the order of the task.
func (p *Problem) SlipReplies(do func(s *Slip, r Reply)) {
	for _, s := range p.slips {
		do(s.slip, s.reply)
	}
}
