// Package problem makes problems: a task with numbers drawn from a code or given by
// someone, worked out step by step by calc, with the right answer and what common errors
// give. It knows no words, no terminal and no particular task.
package problem

import (
	"errors"
	"fmt"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// Problem is a task with numbers.
type Problem struct {
	Task     *Task
	Code     Code
	Lathe    machine.Lathe
	Values   Values
	Working  Working
	Expected answer.Expected

	ambiguous bool // see Ambiguous
}

// mostDraws is how often a task is asked for other numbers. A task whose draws are
// so often ambiguous is badly made; the tests over all tasks find it.
const mostDraws = 400

// New makes the problem of a code.
func New(t *Task, c Code) (*Problem, error) {
	if !t.Allows(c.System) {
		return nil, fmt.Errorf("%s is not set in %s: give --units %s", t.Name, c.System, t.Systems[0])
	}
	lathe, err := c.lathe()
	if err != nil {
		return nil, err
	}
	d := drawFor(t, c, lathe)
	for range mostDraws {
		p, err := d.once(t, c)
		if err != nil || p.ambiguous {
			continue
		}
		switch e := &p.Expected; {
		case e.Options == nil:
			e.Options = e.Kind.Offer(e, d.Shuffle)
		case t.Shuffled:
			e.Options = d.Shuffle(e.Options)
		}
		return p, nil
	}
	return nil, fmt.Errorf("%s finds no numbers that fit the lathe of %s", t.Name, calc.Quoted(c.String()))
}

// Once draws the numbers of a code a single time, for those who look at what is thrown away:
// the problem may be ambiguous, and there is an error where nothing can be worked out. It
// offers no options.
func Once(t *Task, c Code) (*Problem, error) {
	lathe, err := c.lathe()
	if err != nil {
		return nil, err
	}
	return drawFor(t, c, lathe).once(t, c)
}

func drawFor(t *Task, c Code, lathe machine.Lathe) *Draw {
	return &Draw{Level: c.Level, System: c.System, Lathe: lathe, inputs: t.Inputs, source: seeded(c)}
}

// errGaveUp says that a draw gave up on its numbers.
var errGaveUp = errors.New("the numbers don't go together")

// once draws and works out one problem.
func (d *Draw) once(t *Task, c Code) (*Problem, error) {
	p := &Problem{Task: t, Code: c, Lathe: d.Lathe, Values: t.Draw(d)}
	if p.Values.inputs == nil {
		return nil, errGaveUp
	}
	if err := p.work(); err != nil {
		return nil, err
	}
	p.ambiguous = !p.settle()
	return p, nil
}

// FromValues is the problem of someone's own numbers: it has a working and common
// errors, no code, and is never thrown away for being ambiguous.
func FromValues(t *Task, v Values, lathe machine.Lathe) (*Problem, error) {
	if err := v.Check(); err != nil {
		return nil, err
	}
	p := &Problem{Task: t, Lathe: lathe, Values: v}
	if err := p.work(); err != nil {
		return nil, err
	}
	p.Expected.DropCoinciding(t.Tolerance)
	p.ambiguous = !p.settle()
	if e := &p.Expected; e.Options == nil {
		e.Options = e.Kind.Offer(e, nil)
	}
	return p, nil
}

// work fills in the working, the right answer and what the common errors give.
func (p *Problem) work() error {
	w, err := p.Task.Work(p.Values)
	if err != nil {
		return err
	}
	p.Working, p.Expected = w, w.Expected
	e := &p.Expected
	if e.Kind != p.Task.Kind {
		return fmt.Errorf("%s is declared to ask for %s and works out %s", p.Task.Name, p.Task.Kind.Name(), e.Kind.Name())
	}
	e.Scrap, e.Safe = p.Task.Scrap, p.Task.Tolerance.Safe
	e.Errors = make([]answer.Known, 0, len(p.Task.Errors))
	for i := range p.Task.Errors {
		c := &p.Task.Errors[i]
		if r := c.response(p.Values); !r.None {
			e.Errors = append(e.Errors, answer.Known{Name: c.Name, Convention: c.Convention, SameResultAs: c.SameResultAs, Near: c.Near, Partial: c.Partial, Response: r})
		}
	}
	return nil
}

// settle sets the tolerances and reports whether key and common errors are far enough
// apart, and no printed step could come out differently on a calculator.
func (p *Problem) settle() bool {
	e := &p.Expected
	return e.Kind.Settle(e, p.Task.Tolerance) && !(e.Kind.Numeric() && p.onRoundingEdge())
}

// onRoundingEdge reports whether a printed step could come out differently on a
// calculator that was fed the printed numbers before it.
func (p *Problem) onRoundingEdge() bool {
	share := firstEdge
	for _, s := range p.Working.Steps {
		shown := s.X * s.Unit.Factor
		if s.Final && calc.NearRoundingEdge(shown, s.Unit.Places, share) {
			return true
		}
		if !calc.Within(calc.Round(shown, s.Unit.Places+2), shown, 1e-9) {
			share = laterEdge
		}
	}
	return false
}

// How near an edge of rounding an answer may not lie, as a share of its last place: where
// only exact numbers went before it, nothing but the six figures of a factor can move it;
// after a step that was rounded that step can, and where it is doubled more.
const (
	firstEdge = 0.004
	laterEdge = 0.04
)

// Ambiguous reports whether an answer might be taken for another one, or a printed step
// come out otherwise on a calculator. Problems of New never are.
func (p *Problem) Ambiguous() bool { return p.ambiguous }

// Mark marks what a learner typed.
func (p *Problem) Mark(text string) answer.Mark { return p.Expected.Mark(text) }

// MarkResponse marks an answer that has been read.
func (p *Problem) MarkResponse(r answer.Response) answer.Mark { return p.Expected.MarkResponse(r) }
