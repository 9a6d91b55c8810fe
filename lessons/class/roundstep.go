package class

import "fmt"

// The steps of a bench round.
const (
	StepHalt      Step = "halt"      // the round takes no more moves
	StepMove      Step = "move"      // the next move of the pass is shown
	StepQuestions Step = "questions" // the questions go on
)

// nextAtBench is the next step of the round at hand, and the event that takes it.
func (r *Room) nextAtBench(round *Round, n int) (Step, Event, error) {
	e := Event{Kind: Halted, Set: n}
	switch {
	case r.Paused || r.Ended:
		return "", Event{}, ErrNotNow
	case !round.Closed:
		return StepHalt, e, nil
	case round.Shown == 0:
		e.N = 1
		return StepCame, e, nil
	case round.Shown < round.lines():
		e.N = round.Shown + 1
		return StepMove, e, nil
	}
	return r.fromBench()
}

// LeaveBench is the event that leaves the round at hand for the questions, wherever it is.
func (r *Room) LeaveBench() (Event, error) {
	if round, _ := r.Round(); round == nil || r.Paused || r.Ended {
		return Event{}, ErrNotNow
	}
	_, e, err := r.fromBench()
	return e, err
}

// fromBench is the step from the bench to the questions: to those at hand, and where all of these
// were asked, to a set that was left unfinished.
func (r *Room) fromBench() (Step, Event, error) {
	a := r.Asking()
	if a == nil {
		return "", Event{}, ErrNotNow
	}
	if r.doneApart() || a.Way == Together && a.Open >= 0 && a.Locked && len(a.Unasked()) == 0 {
		if step, e, err := r.nextReturn(); err == nil {
			return step, e, nil
		}
	}
	return StepQuestions, Event{Kind: Turned, Set: r.Now}, nil
}

// backAtBench is the event that shows less of the round at hand. It is never opened again.
func (r *Room) backAtBench(round *Round, n int) (Event, error) {
	if r.Paused || r.Ended || round.Shown == 0 {
		return Event{}, ErrNotNow
	}
	return Event{Kind: Halted, Set: n, N: round.Shown - 1}, nil
}

// positionAtBench is where the room is in a round.
func positionAtBench(round *Round, n int) string {
	return fmt.Sprint("bench.", n, ".", flag(round.Closed), ".", round.Shown)
}
