package answer_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// How responses and keys are printed, and what else is right beside the key.
func TestPrintedResponses(t *testing.T) {
	limits := answer.Expected{Kind: answer.Limits, Unit: machine.InchUnit, Key: answer.NumberResponse(0.4875), Low: 0.485, High: 0.49}
	row := answer.Expected{Kind: answer.Readings, Unit: machine.InchUnit, Key: answer.NumbersResponse(0.004, 0.005)}
	choice := answer.Expected{Kind: answer.Choice, Key: answer.OptionsResponse("b"), Options: []string{"a", "b"}}
	some := answer.Expected{Kind: answer.Several, Key: answer.OptionsResponse("3", "1"), Options: []string{"1", "2", "3"}}
	none := answer.Expected{Kind: answer.Several, Options: []string{"1", "2", "3"}}
	order := answer.Expected{Kind: answer.Order, Key: answer.OptionsResponse("b", "c", "a"), Options: []string{"a", "b", "c"}}
	named := answer.Expected{Kind: answer.Designation, Unit: machine.InchUnit, Key: answer.Response{Fields: [][2]string{{"diameter", "0.5"}, {"tpi", "13"}, {"side", "outside"}}}}
	upper, count := inches(0.05), inches(7)
	upper.Safe = answer.Below
	count.Unit = passesUnit
	angle, speed, coarse := inches(29.5), inches(95), inches(0.05)
	angle.Unit, angle.Tolerance = machine.DegreeUnit, 0.25
	speed.Unit, speed.Tolerance = machine.RPMUnit, 4.6
	coarse.Tolerance = 0.00004 // less than a unit of the last place
	for _, c := range []struct {
		name, text, unit, accepts string
		e                         answer.Expected
		figures                   []string
	}{
		{"length", "0.0500 in", "in", "0.0490 to 0.0510 in", inches(0.05), []string{"0.0500"}},
		{"upper limit", "0.0500 in", "in", "0.0490 to 0.0500 in", upper, []string{"0.0500"}},
		{"tolerance under a place", "0.0500 in", "in", "", coarse, []string{"0.0500"}},
		{"count", "7 passes", "passes", "", count, []string{"7"}},
		{"angle", "29.50 degrees", "degrees", "29.25 to 29.75 degrees", angle, []string{"29.50"}},
		{"speed", "95 rpm", "rpm", "91 to 99 rpm", speed, []string{"95"}}, // inwards from 90.4 and 99.6
		{"limits", "0.4850 to 0.4900 in", "in", "", limits, nil},
		{"readings", "0.0040, 0.0050 in", "in", "", row, []string{"0.0040", "0.0050"}},
		{"choice", "2", "", "", choice, nil},
		{"several", "1, 3", "", "", some, nil},
		{"none of several", "none", "", "", none, nil},
		{"order", "2 3 1", "", "", order, nil},
		{"designation", "0.5, 13, outside", "", "", named, nil},
	} {
		e := &c.e
		if got := e.Text(); got != c.text {
			t.Errorf("%s: the key prints %q, want %q", c.name, got, c.text)
		}
		if got := e.Join(e.PrintKey(), ", "); got != c.text {
			t.Errorf("%s: the parts of the key print %q, want %q", c.name, got, c.text)
		}
		if got := e.UnitBehind(); got != c.unit {
			t.Errorf("%s: %q stands behind, want %q", c.name, got, c.unit)
		}
		if got := e.Kind.Accepts(e); got != c.accepts {
			t.Errorf("%s accepts %q, want %q", c.name, got, c.accepts)
		}
		if got := e.Kind.Figures(e); !slices.Equal(got, c.figures) {
			t.Errorf("%s: figures %q, want %q", c.name, got, c.figures)
		}
		if e.Kind == answer.Limits {
			continue // its key prints as a range
		}
		if m := e.Mark(e.Show(e.Key)); m.Verdict != answer.Right {
			t.Errorf("%s: its own key %q is marked %s", c.name, e.Show(e.Key), m.Verdict)
		}
	}
	if got := limits.Show(answer.NumberResponse(0.4861)); got != "0.4861 in" {
		t.Errorf("inside limits: %q", got)
	}
	if got := some.Kind.Chosen(&some, some.Key); !slices.Equal(got, []string{"1", "3"}) {
		t.Errorf("chosen: %q, want the order of the options", got)
	}
	if got := choice.Kind.Chosen(&choice, choice.Key); !slices.Equal(got, []string{"b"}) {
		t.Errorf("chosen: %q", got)
	}
	if got := row.Kind.Chosen(&row, row.Key); got != nil {
		t.Errorf("readings choose %q", got)
	}
}

// Given is a number with its own decimals where an answer has fewer; printed it is not.
func TestWhatWasTypedKeepsItsDecimals(t *testing.T) {
	e := inches(0.05)
	for x, want := range map[float64][2]string{
		0.05: {"0.0500 in", "0.0500 in"}, 0.05125: {"0.0513 in", "0.05125 in"}, 0.0512499: {"0.0512 in", "0.05125 in"}, 46.875: {"46.8750 in", "46.8750 in"}, 3.0 / 64: {"0.0469 in", "0.046875 in"},
	} {
		r := answer.NumberResponse(x)
		if got := [2]string{e.Show(r), e.ShowGiven(r)}; got != want {
			t.Errorf("%v prints %q, want %q", x, got, want)
		}
	}
	if got := e.PrintGiven(answer.NumberResponse(3.0 / 64)); !slices.Equal(got, []string{"0.046875"}) {
		t.Errorf("without the unit: %q", got)
	}
	choice := answer.Expected{Kind: answer.Choice, Options: []string{"a", "b"}}
	if got := choice.ShowGiven(answer.OptionsResponse("b")); got != "2" {
		t.Errorf("an option: %q", got)
	}
}

// Typed is what someone types who writes down what is printed.
func TestTyped(t *testing.T) {
	thirds := answer.Response{X: 1.0 / 3, Xs: []float64{1.0 / 3, 2.0 / 3}, Keys: []string{"a"}}
	for _, c := range []struct {
		kind  answer.Kind
		unit  machine.Unit
		wantX string
		want  string
	}{
		{answer.Quantity, machine.InchUnit, "0.333300", "0.333333, 0.666667"},
		{answer.Quantity, machine.MMUnit, "0.333346", "0.333333, 0.666667"}, // 8.467 mm
		{answer.Limits, machine.InchUnit, "0.333300", "0.333333, 0.666667"},
		{answer.Readings, machine.InchUnit, "0.333333", "0.333300, 0.666700"},
		{answer.Choice, machine.InchUnit, "0.333333", "0.333333, 0.666667"},
	} {
		e := answer.Expected{Kind: c.kind, Unit: c.unit}
		got := c.kind.Typed(&e, thirds)
		if x, xs := fmt.Sprintf("%.6f", got.X), fmt.Sprintf("%.6f, %.6f", got.Xs[0], got.Xs[1]); x != c.wantX || xs != c.want {
			t.Errorf("%s in %s: %s and %s, want %s and %s", c.kind.Name(), c.unit.Name, x, xs, c.wantX, c.want)
		}
	}
	if thirds.Xs[0] != 1.0/3 {
		t.Error("the response that was given has changed")
	}
}

// What is no number is no response: nothing can be near it.
func TestNumbersThatAreNone(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if r := answer.NumberResponse(x); !r.None {
			t.Errorf("%v is the response %+v", x, r)
		}
	}
	if r := answer.LengthResponse(0); r.None {
		t.Error("a length of 0 is no response")
	}
}
