package problem_test

import (
	"errors"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// lines are the steps of a working as they are printed.
func lines(w *problem.Working) string {
	var all []string
	for i := range w.Steps {
		all = append(all, w.Line(i))
	}
	return strings.Join(all, "\n")
}

// A line has the formula, the numbers in place of its symbols, and the value: the last
// with the places of an answer, those on the way with two more.
func TestLinesOfAWorking(t *testing.T) {
	v := read(t, everyInput, machine.Imperial, "blank=0.5; angle=29.5; share=-0.25; tpi=13")
	w := v.Working()
	h := problem.Step1(w, "h", calc.ExternalDepth, w.Pitch())
	problem.Step2(w, "c", calc.TravelForDepth, h, v.Angle("angle"))
	w.Number("q", "r x r", machine.PlainUnit)(0.0625, nil)
	w.Number("k", "", machine.CountUnit)(3, nil)
	w.Length("m", "d - h1 + 3")(3.5, nil) // h1 is no symbol here, and h is none of its letters
	w.Length("x", "2 x 3")(6, nil)
	done, err := w.Quantity()
	if err != nil {
		t.Fatal(err)
	}
	want := `P = 1 / n = 1 / 13 = 0.076923 in
h = 0.613435 x P = 0.613435 x 0.076923 = 0.047187 in
c = h / cos(a) = 0.047187 / cos(29.5) = 0.054216 in
q = r x r = (-0.25) x (-0.25) = 0.0625
k = 3
m = d - h1 + 3 = 0.5000 - h1 + 3 = 3.500000 in
x = 2 x 3 = 6.0000 in`
	if got := lines(&done); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if e := done.Expected; e.Kind != answer.Quantity || e.Key.X != 6 || e.Unit != machine.InchUnit {
		t.Errorf("expected %+v", e)
	}
}

// The pitch is worked out from what the thread was told by, in the units of the problem.
func TestPitchOfAWorking(t *testing.T) {
	for _, c := range []struct {
		s          machine.System
		told, want string
	}{
		{machine.Imperial, "tpi=8", "P = 1 / n = 1 / 8 = 0.125000 in"},
		{machine.Metric, "tpi=8", "P = 25.4 / n = 25.4 / 8 = 3.17500 mm"},
		{machine.Imperial, "thread=1-8 UNC", "n = 8 TPI\nP = 1 / n = 1 / 8 = 0.125000 in"},
		{machine.Imperial, "thread=M12x1.5", "P = 0.059055 in"},
		{machine.Metric, "thread=M12x1.5", "P = 1.500 mm"},
		{machine.Metric, "pitch=1.5", ""}, // nothing to work out
	} {
		v := read(t, problem.ThreadInputs, c.s, c.told)
		w := v.Working()
		w.Pitch()
		if got := lines(w); got != c.want {
			t.Errorf("%s in %s: %q, want %q", c.told, c.s, got, c.want)
		}
	}
}

// Each quantity stands in its own unit unless the task names another.
func TestUnitsOfSteps(t *testing.T) {
	v := problem.NewValues(nil, machine.Metric)
	w := v.Working()
	lead := problem.Step2(w, "l", calc.LeadOfStarts, calc.Millimetres(2), 3)
	problem.Step1(w, "n", calc.TPIOfPitchMM, calc.Millimetres(2))
	problem.Step2(w, "A", calc.ThreadSlope, lead, calc.Inches(1))
	problem.Step3(w, "v", calc.FastestSpeed, calc.Millimetres(6), calc.Millimetres(2), 1.5)
	problem.Step2(w, "r", calc.GearsInch, lead, lead)
	second := machine.Unit{Name: "s", Factor: 1, Places: 2}
	problem.StepIn3(w, "y", second, calc.TimeForGap, calc.Millimetres(6), calc.SpindleSpeed(60), calc.Millimetres(2))
	problem.StepIn2(w, "j", machine.Unit{Name: "mm/s", Factor: 25.4, Places: 2}, calc.CarriageSpeed, calc.SpindleSpeed(60), lead)
	want := []string{"6.00000 mm", "12.7 TPI", "4.3001 degrees", "120 rpm", "1", "3 s", "6 mm/s"}
	for i, s := range w.Steps {
		if got := s.Unit.WithName(s.Value()); got != want[i] {
			t.Errorf("%s is %s, want %s", s.Symbol, got, want[i])
		}
	}
	if w.Steps[3].Formula != calc.FastestSpeed.Text || w.Steps[5].Formula != calc.TimeForGap.Text {
		t.Errorf("formulas %q and %q", w.Steps[3].Formula, w.Steps[5].Formula)
	}
}

// The first error is the one that is told: what follows comes from it.
func TestFirstErrorOfAWorking(t *testing.T) {
	v := problem.NewValues(nil, machine.Imperial)
	first := errors.New("first")
	for name, steps := range map[string]func(w *problem.Working){
		"refused":       func(w *problem.Working) { w.Refuse(first) },
		"a number":      func(w *problem.Working) { w.Number("x", "", machine.PlainUnit)(0, first) },
		"a length":      func(w *problem.Working) { w.Length("x", "")(0, first) },
		"an angle":      func(w *problem.Working) { w.Angle("x", "")(0, first) },
		"nothing wrong": func(w *problem.Working) { w.Refuse(nil); w.Refuse(first) },
	} {
		w := v.Working()
		steps(w)
		problem.Step1(w, "h", calc.ExternalDepth, calc.Inches(99)) // out of range as well
		w.Refuse(errors.New("later"))
		if _, err := w.Quantity(); !errors.Is(err, first) {
			t.Errorf("%s: %v", name, err)
		}
	}
	w := v.Working()
	problem.Step1(w, "h", calc.ExternalDepth, calc.Inches(99))
	if _, err := w.Quantity(); err == nil || !strings.Contains(err.Error(), "pitch") {
		t.Errorf("the error of a formula: %v", err)
	}
}

// How workings end: each kind of answer with its key.
func TestEndsOfWorkings(t *testing.T) {
	v := problem.NewValues(nil, machine.Imperial)
	length := func(xs ...calc.Length) *problem.Working {
		w := v.Working()
		for i, x := range xs {
			w.Length(string(rune('p'+i)), "1 x 1")(x, nil)
		}
		return w
	}
	for _, c := range []struct {
		kind answer.Kind
		end  func() (problem.Working, error)
		want string
	}{
		{answer.Quantity, length(0.1, 0.2).Quantity, "0.2000 in"},
		{answer.Readings, func() (problem.Working, error) { return length(0.1, 0.2, 0.3).Row("r", "p") }, "0.3000, 0.1000 in"},
		{answer.Limits, func() (problem.Working, error) { return length().Limits(0.485, 0.49) }, "0.4850 to 0.4900 in"},
		{answer.Several, func() (problem.Working, error) { return length().Several([]string{"1", "2", "3"}, []string{"1", "3"}) }, "1, 3"},
		{answer.Designation, func() (problem.Working, error) {
			return length().Reading([2]string{"diameter", "0.5"}, [2]string{"tpi", "13"})
		}, "0.5, 13"},
	} {
		w, err := c.end()
		if err != nil || w.Expected.Kind != c.kind || w.Expected.Text() != c.want {
			t.Errorf("%s: %s is %s, %v, want %s", c.kind.Name(), w.Expected.Kind.Name(), w.Expected.Text(), err, c.want)
		}
	}
	if w, err := length().Choice("stop"); err != nil || w.Expected.Kind != answer.Choice || w.Expected.Key.Keys[0] != "stop" {
		t.Errorf("choice: %+v, %v", w.Expected, err)
	}
	if w, err := length().Order("stop", "open"); err != nil || w.Expected.Kind != answer.Order || len(w.Expected.Key.Keys) != 2 {
		t.Errorf("order: %+v, %v", w.Expected, err)
	}
	row, _ := length(0.1, 0.2, 0.3).Row("r", "p")
	if row.Steps[0].Value() != "0.1000" || row.Steps[1].Value() != "0.200000" || row.Steps[2].Value() != "0.3000" {
		t.Errorf("the readings of a row have the places of an answer:\n%s", lines(&row))
	}
}
