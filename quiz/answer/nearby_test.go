package answer_test

import (
	"testing"

	"scratchpass/quiz/answer"
)

// Another way that is as near as can be set is named only where its printed number is
// neither that of the key nor among the numbers of an error; it narrows nothing.
func TestSettleDropsWhatCannotBeTold(t *testing.T) {
	length := answer.Tolerance{Inch: 0.001}
	for _, c := range []struct {
		name string
		x    float64
		kept bool
	}{
		{"the printed key", 0.05009, false}, {"one place on", 0.0501, true}, {"far outside the tolerance", 0.06, true},
		{"just outside an error", 0.07087, true}, {"inside an error", 0.0708, false}, {"at an error", 0.07, false},
	} {
		e := with(inches(0.05), 0.07)
		e.Errors = append(e.Errors, answer.Known{Name: "near", Convention: true, Near: true, Response: answer.NumberResponse(c.x)})
		if ok := e.Kind.Settle(e, length); !ok || e.Tolerance != 0.001 || (len(e.Errors) == 2) != c.kept {
			t.Errorf("%s: settled %v, tolerance %v, %d errors", c.name, ok, e.Tolerance, len(e.Errors))
		}
	}
}

// What an error gives keeps its distance from a whole turn as well, and a limit is not
// drawn where its printed number is beyond it.
func TestSettleOfTurnsAndLimits(t *testing.T) {
	turn := with(inches(0), 0.1002)
	turn.Alike = []float64{0.1}
	if turn.Kind.Settle(turn, answer.Tolerance{Inch: 0.001}) {
		t.Error("an error at a whole turn was not seen")
	}
	for _, c := range []struct {
		key  float64
		safe answer.SafeSide
		ok   bool
	}{
		{0.01876, answer.Above, true}, {0.01884, answer.Above, false}, {0.0188, answer.Above, true},
		{0.01876, answer.Below, false}, {0.01884, answer.Below, true}, {0.0188, answer.Below, true},
		{0.01876, answer.BothSides, true}, {0.01884, answer.BothSides, true},
	} {
		e := with(inches(c.key), 0.03)
		e.Safe = c.safe
		if got := e.Kind.Settle(e, answer.Tolerance{Inch: 0.001}); got != c.ok {
			t.Errorf("%v, safe side %v: %v", c.key, c.safe, got)
		}
		if !e.Right(e.Kind.Typed(e, e.Key)) {
			t.Errorf("%v, safe side %v: the printed key is not right", c.key, c.safe)
		}
	}
}
