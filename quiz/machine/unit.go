package machine

import "scratchpass/calc"

// Unit says how a number is shown. Inside, lengths are inches, angles degrees and
// everything else is what its name says.
type Unit struct {
	Name   string  // as printed behind the number: "in"
	One    string  // as printed behind a lone 1, where that differs: "pass" of "passes"
	Factor float64 // shown = held x Factor
	Places int     // decimals of an answer; a step on the way shows two more
	Count  bool    // a number of things: no decimals where it is whole
	Given  int     // decimals of a number that was given, and one; 0 takes those of the unit
}

// The units in use. Inches have four places and millimetres three, always.
var (
	InchUnit   = Unit{Name: "in", Factor: 1, Places: 4}
	MMUnit     = Unit{Name: "mm", Factor: calc.MillimetresPerInch, Places: 3}
	DegreeUnit = Unit{Name: "deg", Factor: 1, Places: 2}
	TPIUnit    = Unit{Name: "TPI", Factor: 1, Places: 2}
	RPMUnit    = Unit{Name: "rpm", Factor: 1} // turns of the spindle in a minute
	PlainUnit  = Unit{Factor: 1, Places: 4}
	CountUnit  = Unit{Factor: 1, Count: true}
)

// DegreeWord is how degrees are printed.
const DegreeWord = "degrees"

// System is the system of units a problem is set in.
type System int

// The two systems.
const (
	Imperial System = iota
	Metric
)

// Length returns the unit in which the system shows lengths.
func (s System) Length() Unit {
	if s == Metric {
		return MMUnit
	}
	return InchUnit
}

// ParseSystem reads "in" or "mm".
func ParseSystem(text string) (System, error) {
	switch text {
	case "in":
		return Imperial, nil
	case "mm":
		return Metric, nil
	}
	return 0, &calc.InputError{What: "units", Got: calc.Quoted(text), Want: "in or mm"}
}

// String returns "in" or "mm".
func (s System) String() string { return s.Length().Name }

// Fixed prints a held number in the unit, without its name.
func (u Unit) Fixed(held float64) string {
	if u.Count {
		return calc.Shortest(held*u.Factor, u.Places+1)
	}
	return calc.Fixed(held*u.Factor, u.Places)
}

// Text prints a held number in the unit, with its name.
func (u Unit) Text(held float64) string { return u.WithName(u.Fixed(held)) }

// WithName puts the unit's name behind a printed number: "0.0556 in", "1 pass". A unit
// without a name leaves the number alone.
func (u Unit) WithName(number string) string {
	switch u.Name {
	case "":
		return number
	case DegreeUnit.Name:
		return number + " " + DegreeWord
	}
	if number == "1" && u.One != "" {
		return number + " " + u.One
	}
	return number + " " + u.Name
}

// Exact prints a held number with as many decimals as it has, at least the
// places of a length and at most two more: numbers that were given.
func (u Unit) Exact(held float64) string {
	shown := held * u.Factor
	switch {
	case u.Given > 0:
		if calc.Within(calc.Round(shown, u.Given-1), shown, 1e-9) {
			return calc.Fixed(shown, u.Given-1)
		}
	case u.Name == "in", u.Name == "mm":
		if calc.Within(calc.Round(shown, u.Places), shown, 1e-9) {
			return calc.Fixed(shown, u.Places)
		}
	}
	return calc.Shortest(shown, u.Places+2)
}

// Step prints a held number as a step on the way to an answer.
func (u Unit) Step(held float64) string {
	if u.Name != "in" && u.Name != "mm" {
		return u.Exact(held)
	}
	return calc.Fixed(held*u.Factor, u.Places+2)
}
