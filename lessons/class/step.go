package class

import (
	"errors"
	"fmt"
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
)

// Next is the next step, and the event that takes it. Where a set tells nothing of the answers,
// what came is left out. After the last question it is ErrNotNow.
func (r *Room) Next() (Step, Event, error) {
	if round, n := r.Round(); round != nil {
		return r.nextAtBench(round, n)
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
	return "", e, ErrNotNow
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
	it, err := a.Item(OnTheWall, a.Open)
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
