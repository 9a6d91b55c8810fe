package class

import (
	"errors"
	"fmt"
	"maps"
	"slices"
)

// ErrNotNow says that something can't be done in a room as it is.
var ErrNotNow = errors.New("that can't be done now")

// Step is what the room goes on to when all go together.
type Step string

// The steps, in their order.
const (
	StepFirst Step = "first" // the first question is opened
	StepLock  Step = "lock"  // the question at hand takes no more answers
	StepCame  Step = "came"  // what came of it is shown
	StepLine  Step = "line"  // the next line of its working is
	StepOn    Step = "on"    // the next question is opened

	StepReturn Step = "return" // a set that was left unfinished goes on, at its next question
)

// Next is the next step, and the event that takes it. Where a set tells nothing of the answers,
// what came is left out. After the last question it is the way back to a set that was left
// unfinished, and where there is none ErrNotNow.
func (r *Room) Next() (Step, Event, error) {
	if round, n := r.Round(); round != nil {
		return r.nextAtBench(round, n)
	}
	if r.doneApart() {
		return r.nextReturn()
	}
	a, lines, err := r.stepping()
	if err != nil {
		return "", Event{}, err
	}
	e := Event{Set: r.Now, Place: a.Open}
	shown := a.Shown(a.Open)
	switch {
	case a.Open < 0:
		e.Kind, e.Place = Opened, 0
		return StepFirst, e, nil
	case !a.Locked:
		e.Kind = Locked
		return StepLock, e, nil
	case !a.Never() && shown == 0:
		e.Kind, e.N = Showed, 1
		return StepCame, e, nil
	case !a.Never() && shown <= lines:
		e.Kind, e.N = Showed, shown+1
		return StepLine, e, nil
	case a.Open+1 < a.Places():
		e.Kind, e.Place = Opened, a.Open+1
		if a.closed[e.Place] { // it was left for an earlier one
			e.N = 1
		}
		return StepOn, e, nil
	}
	return r.nextReturn()
}

// nextReturn is the step back to the set that was left unfinished.
func (r *Room) nextReturn() (Step, Event, error) {
	if n, place := r.Left(); n >= 0 {
		e := Event{Kind: Opened, Set: n, Place: place}
		if a := r.Sets[n]; place == a.Open && !a.Locked { // it still takes answers, as it did
			e.Kind, e.Place = Turned, 0
		}
		return StepReturn, e, nil
	}
	return "", Event{Set: r.Now}, ErrNotNow
}

// Left is the set that was left last with questions that were not asked yet, and the question that
// it goes on with; -1 for none. It is never the set at hand, which goes on by itself.
func (r *Room) Left() (n, place int) {
	for n := len(r.Sets) - 1; n >= 0; n-- {
		a := r.Sets[n]
		left := a.Unasked()
		switch {
		case n == r.Now || len(left) == 0:
		case !a.Locked && !a.told[a.Open]:
			return n, a.Open
		default:
			return n, left[0]
		}
	}
	return -1, -1
}

// Unasked are the questions of a set that was begun, all together, that were asked of nobody yet.
func (a *Asking) Unasked() []int {
	if a.Way != Together || a.Open < 0 {
		return nil
	}
	return slices.Sorted(maps.Keys(a.NeverPut()))
}

// doneApart reports whether all is done in a set in which people go at their own pace.
func (r *Room) doneApart() bool {
	a := r.Asking()
	if a == nil || a.Way == Together || r.Paused || r.Ended {
		return false
	}
	came := r.Came()
	return a.Locked || len(came) > 0 && !slices.ContainsFunc(came, func(p *Person) bool { return !r.answeredAll(p, r.Now) })
}

// Back is the event that takes the last step back: less is shown, or the question before is, to
// be looked at. A question that was closed is never opened by it. At the beginning it is
// ErrNotNow.
func (r *Room) Back() (Event, error) {
	if round, n := r.Round(); round != nil {
		return r.backAtBench(round, n)
	}
	a, _, err := r.stepping()
	if err != nil {
		return Event{}, err
	}
	e := Event{Set: r.Now, Place: a.Open}
	if shown := a.Shown(a.Open); shown > 0 {
		e.Kind, e.N = Showed, shown-1
		return e, nil
	}
	for e.Place--; e.Place >= 0; e.Place-- {
		if a.Been(e.Place) {
			e.Kind, e.N = Opened, 1
			return e, nil
		}
	}
	return e, ErrNotNow
}

// stepping is the set at hand, and how many lines the working of its question has; an error
// where no step can be taken.
func (r *Room) stepping() (a *Asking, lines int, err error) {
	a = r.Asking()
	if a == nil || a.Way != Together || r.Paused || r.Ended {
		return nil, 0, ErrNotNow
	}
	if a.Open < 0 {
		return a, 0, nil
	}
	it, err := r.Example(r.Now, a.Open)
	if err != nil {
		return nil, 0, err
	}
	return a, linesOf(it), nil
}

// Position is where the room is: a step that was meant from elsewhere is not taken.
func (r *Room) Position() string {
	if round, n := r.Round(); round != nil {
		return positionAtBench(round, n)
	}
	a := r.Asking()
	if a == nil {
		return ""
	}
	return fmt.Sprint(r.Now, ".", a.Open, ".", flag(a.Locked), ".", a.Shown(a.Open))
}
