package class_test

import (
	"fmt"
	"strings"
	"testing"

	"scratchpass/lessons/class"
)

// oneMore asks one question of a set of its own, opened for all.
func (r room) oneMore() {
	r.t.Helper()
	text := strings.Replace(strings.SplitAfter(fmt.Sprintf(blueprint, "end"), "slots:\n")[0], "set: lesson", fmt.Sprint("set: lesson-more-", len(r.Sets)), 1)
	r.do(class.Event{Kind: class.Asked, Text: text + "- {tasks: [no-cloth-on-turning-work]}\n", Name: string(class.Together)})
	r.do(class.Event{Kind: class.Opened, Set: len(r.Sets) - 1})
}

// until takes steps until one is at hand.
func (r room) until(step class.Step) class.Event {
	r.t.Helper()
	for range 60 {
		next, e, err := r.Next()
		if err != nil {
			r.t.Fatalf("no step %s: %v", step, err)
		}
		if next == step {
			return e
		}
		r.do(e)
	}
	r.t.Fatalf("no step %s", step)
	return class.Event{}
}

// After one more question, and after the bench, the next step leads back to the set that was left,
// at its next question, and on from there.
func TestTheWayBackToWhatWasLeft(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.do(r.until(class.StepLock)) // question 1 is closed
	r.do(class.Event{Kind: class.Showed, N: 1})
	r.oneMore()
	e := r.until(class.StepReturn)
	if e.Kind != class.Opened || e.Set != 0 || e.Place != 1 {
		t.Fatalf("back leads to %+v", e)
	}
	r.do(class.Event{Kind: class.Benched, Text: jobText(t, screw), N: 3})
	if e = r.until(class.StepReturn); e.Set != 0 || e.Place != 1 {
		t.Fatalf("from the bench it leads to %+v", e)
	}
	r.do(e)
	if a := r.Asking(); r.Now != 0 || a.Open != 1 || a.Locked {
		t.Error("it goes on at ", r.Now, a.Open, a.Locked)
	}
	for _, step := range r.walk() {
		if step == class.StepReturn {
			t.Error("there is a way back, and nothing is left")
		}
	}
	if a := r.Asking(); a.Open != 2 {
		t.Error("it ended at question ", a.Open+1)
	}
}

// A question that was left while it took answers is come back to as it was.
func TestAnOpenQuestionIsComeBackTo(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.do(r.until(class.StepFirst))
	r.oneMore()
	if e := r.until(class.StepReturn); e.Kind != class.Turned || e.Set != 0 {
		t.Fatalf("back leads to %+v", e)
	}
}

// From a ticket that all have answered it leads back too, and from one that goes on it does not.
func TestFromATicketBack(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.do(r.until(class.StepLock))
	r.oneMore()
	r.do(class.Event{Kind: class.Ran, Set: 1, Text: string(class.Ticket)})
	if step, _, err := r.Next(); err == nil {
		t.Error("out of a ticket that goes on: ", step)
	}
	r.do(class.Event{Kind: class.Locked, Set: 1})
	r.until(class.StepReturn)
}
