package served

import (
	"errors"
	"testing"
	"time"

	"scratchpass/lessons/face/web"
	"scratchpass/lessons/school"
)

// A request that has found a study, and waits while its learner signs off, begins nothing in it: nobody
// would ever end that.
func TestNothingBeginsAfterSigningOff(t *testing.T) {
	begun := make(chan string, 2)
	s := &studies{of: map[string]*study{}, clock: time.Now, fail: func(err error) { t.Error(err) },
		place: func(string) (string, error) { return "", nil },
		run:   func(who school.Person, _ *web.Talk) error { begun <- who.ID; return nil }}
	ada := school.Person{ID: "Ada"}
	one, err := s.find(ada.ID)
	if err != nil {
		t.Fatal(err)
	}
	s.leave(ada.ID)
	if err := s.in(t.Context(), one, ada, func(*study) { t.Error("it was served") }); !errors.Is(err, errLeft) {
		t.Error(err)
	}
	served := false
	if err := s.with(t.Context(), ada, func(*study) { served = true }); err != nil || !served { // and when they come back
		t.Error(served, err)
	}
	s.stop()
	if len(begun) != 1 {
		t.Errorf("%d studies were begun", len(begun))
	}
}
