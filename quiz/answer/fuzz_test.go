package answer_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// Whatever is typed for whatever kind is either not read, and then said what would be, or
// a response that reads the same again when it is printed and typed.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"0.0556", "1.411 mm", "55.6 thou", "29°30'", "1:2", "95 rpm", "0.004 then 0.005", "2", "1-3, 5", "none", "3 1 2", "0.5, 13, outside", "½", "-0", "P = 1/18"} {
		f.Add(s)
	}
	kinds := []answer.Expected{
		{Kind: answer.Quantity, Unit: machine.InchUnit}, {Kind: answer.Quantity, Unit: machine.MMUnit}, {Kind: answer.Quantity, Unit: machine.DegreeUnit},
		{Kind: answer.Quantity, Unit: machine.PlainUnit}, {Kind: answer.Quantity, Unit: machine.RPMUnit}, {Kind: answer.Quantity, Unit: passesUnit}, {Kind: answer.Limits, Unit: machine.InchUnit},
		{Kind: answer.Readings, Unit: machine.InchUnit, Key: answer.NumbersResponse(0.004, 0.005)},
		{Kind: answer.Choice, Options: []string{"a", "b-c", "d"}},
		{Kind: answer.Several, Options: []string{"1", "2", "3", "4", "5", "6"}},
		{Kind: answer.Order, Options: []string{"a", "b", "c"}},
		{Kind: answer.Designation, Unit: machine.InchUnit, Key: answer.Response{Fields: [][2]string{{"diameter"}, {"tpi"}, {"side"}}}},
	}
	f.Fuzz(func(t *testing.T, text string) {
		for i := range kinds {
			e := &kinds[i]
			r, err := e.Read(text)
			if err != nil {
				var u *answer.UnreadError
				if !errors.As(err, &u) || u.Want.Phrase == "" {
					t.Errorf("%s %q: %v", e.Kind.Name(), text, err)
				}
				continue
			}
			for _, x := range append([]float64{r.X}, r.Xs...) {
				if shown := x * e.Unit.Factor; math.IsNaN(x) || math.IsInf(x, 0) || math.Abs(shown) > 1e8 {
					return // more than anyone types; that it is a number at all is held by FuzzMark
				}
			}
			again, err := e.Read(e.Show(r))
			if err != nil {
				t.Fatalf("%s: %q prints %q, which is not read: %v", e.Kind.Name(), text, e.Show(r), err)
			}
			want := e.Kind.Typed(e, r)
			same := slices.EqualFunc(again.Xs, want.Xs, func(x, y float64) bool { return calc.Within(x, y, 1e-9*(1+math.Abs(y))) })
			if e.Kind.OneNumber() {
				same = calc.Within(again.X, want.X, 1e-9*(1+math.Abs(want.X)))
			}
			if !e.Kind.Numeric() {
				same = e.Kind.Same(e, again, r, 0)
			}
			if !same {
				t.Errorf("%s: %q is %+v, printed %q and read %+v", e.Kind.Name(), text, r, e.Show(r), again)
			}
		}
	})
}
