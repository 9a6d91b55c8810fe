package shared

import (
	"scratchpass/calc"
	"scratchpass/quiz/problem"
)

// sideOf is the side that a designation's class names, or the one given where it
// names none.
func sideOf(d calc.Designation, otherwise string) string {
	if side, ok := d.Side(); ok {
		return side.String()
	}
	return otherwise
}

// wrongSide is the error for a thread of the other side than a task is about.
func wrongSide(d calc.Designation, wanted calc.Side) error {
	is, _ := d.Side()
	return &calc.InputError{What: "thread", Got: calc.Quoted(d.String()), Want: "an " + wanted.Word() + " thread; this one is " + is.Word()}
}

// OnlySide refuses a designation of the other side.
func OnlySide(v problem.Values, side calc.Side) error {
	if v.Has("thread") && sideOf(v.Thread("thread"), side.String()) != side.String() {
		return wrongSide(v.Thread("thread"), side)
	}
	return nil
}

// Handed are the inputs of the tasks that turn on the hand of a thread, and on
// whether it is an external or an internal one.
var Handed = []problem.Input{
	{Name: "kind", Symbol: "kind", Type: problem.InputWord, Words: []string{"outside-right", "outside-left", "inside-right", "inside-left"}},
	{Name: "thread", Symbol: "thread", Type: problem.InputThread, Extra: true},
}

// DrawHanded draws one of the four kinds, with a drawing's callout that says the
// same.
func DrawHanded(d *problem.Draw) problem.Values {
	v := d.Values()
	side, hand := problem.Pick(d, calc.Outside, calc.Inside), problem.Pick(d, calc.LeftHand, calc.RightHand)
	t := d.Thread(calc.Inch/14, calc.Inch/4)
	t.Hand, t.Class = hand, "2A"
	switch {
	case t.Metric && side == calc.Inside:
		t.Class = "6H"
	case t.Metric:
		t.Class = "6g"
	case side == calc.Inside:
		t.Class = "2B"
	}
	v.SetWord("kind", side.String()+"-"+hand.String())
	v.SetThread("thread", t)
	d.Job(&v, side)
	return v
}
