package machine_test

import (
	"testing"

	"scratchpass/quiz/machine"
)

// How numbers are shown: as an answer, as a step on the way, and as they were given. What
// is held is in inches where it is a length.
func TestHowNumbersAreShown(t *testing.T) {
	passes := machine.Unit{Name: "passes", One: "pass", Factor: 1, Places: 1, Count: true}
	for _, c := range []struct {
		unit                     machine.Unit
		held                     float64
		text, fixed, step, exact string
	}{
		{machine.InchUnit, 0.0556, "0.0556 in", "0.0556", "0.055600", "0.0556"},
		{machine.InchUnit, 1, "1.0000 in", "1.0000", "1.000000", "1.0000"},
		{machine.InchUnit, 0.046875, "0.0469 in", "0.0469", "0.046875", "0.046875"},
		{machine.InchUnit, 1.0 / 12, "0.0833 in", "0.0833", "0.083333", "0.083333"},
		{machine.InchUnit, 0.05 + 1e-11, "0.0500 in", "0.0500", "0.050000", "0.0500"}, // a last bit is no decimal
		{machine.InchUnit, -0.00004, "0.0000 in", "0.0000", "-0.000040", "-0.00004"},  // no minus before nothing
		{machine.MMUnit, 0.05, "1.270 mm", "1.270", "1.27000", "1.270"},
		{machine.MMUnit, 1.0 / 12, "2.117 mm", "2.117", "2.11667", "2.11667"},
		{machine.DegreeUnit, 29.5, "29.50 degrees", "29.50", "29.5", "29.5"},
		{machine.DegreeUnit, 2.66056, "2.66 degrees", "2.66", "2.6606", "2.6606"},
		{machine.TPIUnit, 11.5, "11.50 TPI", "11.50", "11.5", "11.5"},
		{machine.RPMUnit, 95.4, "95 rpm", "95", "95.4", "95.4"},
		{machine.PlainUnit, 0.5, "0.5000", "0.5000", "0.5", "0.5"},
		{passes, 1, "1 pass", "1", "1", "1"},
		{passes, 12, "12 passes", "12", "12", "12"},
		{passes, 12.46, "12.46 passes", "12.46", "12.46", "12.46"}, // what is not whole shows it
		{machine.CountUnit, 3, "3", "3", "3", "3"},
	} {
		got := [4]string{c.unit.Text(c.held), c.unit.Fixed(c.held), c.unit.Step(c.held), c.unit.Exact(c.held)}
		if want := [4]string{c.text, c.fixed, c.step, c.exact}; got != want {
			t.Errorf("%v in %q shows %q, want %q", c.held, c.unit.Name, got, want)
		}
	}
}

// A system of units is read and printed under one name.
func TestSystems(t *testing.T) {
	for _, s := range []machine.System{machine.Imperial, machine.Metric} {
		if back, err := machine.ParseSystem(s.String()); err != nil || back != s {
			t.Errorf("%s reads %v, %v", s, back, err)
		}
	}
	for _, text := range []string{"", "inch", "MM", "cm"} {
		if _, err := machine.ParseSystem(text); err == nil {
			t.Errorf("%q is a system of units", text)
		}
	}
}
