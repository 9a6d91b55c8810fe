package calc

import (
	"strings"
)

// LengthUnit is a unit of length that a reader can write behind a number.
type LengthUnit struct {
	Name  string // as printed: "in"
	One   Length // how long one of it is
	Known bool   // false for a number without a unit
}

// The units of length that are read.
var (
	UnitInch       = LengthUnit{"in", Inch, true}
	UnitThou       = LengthUnit{"thou", Thou, true}
	UnitMillimetre = LengthUnit{"mm", Millimetres(1), true}
)

var lengthUnits = map[string]LengthUnit{
	"": {}, "in": UnitInch, "inch": UnitInch, "inches": UnitInch, "ins": UnitInch, `"`: UnitInch,
	"thou": UnitThou, "thous": UnitThou, "thousandths": UnitThou, "thousandth": UnitThou,
	"mm": UnitMillimetre, "millimetre": UnitMillimetre, "millimetres": UnitMillimetre,
	"millimeter": UnitMillimetre, "millimeters": UnitMillimetre,
}

// ParseLength reads a number with or without a unit: 0.0556, .0556in, 55.6 thou,
// 1.411 mm, 3/64". It returns the number as written and the unit; a text without a
// unit has Known false, and the caller knows which was asked for.
func ParseLength(text string) (float64, LengthUnit, error) {
	number, unit := splitUnit(text)
	u, ok := lengthUnits[unit]
	if !ok || len(text) > longestInput {
		return 0, u, &InputError{"can't read", Quoted(text), "a number and in, thou or mm, such as 0.0556 in, 55.6 thou or 1.411 mm"}
	}
	x, err := ParseNumber(number)
	if err != nil {
		return 0, u, &InputError{"can't read", Quoted(text), "a length such as 0.0556, 55.6 thou, 1.411 mm or 3/64"}
	}
	return x, u, nil
}

// LengthOf reads a length and takes a number without a unit to be in the bare unit.
func LengthOf(text string, bare LengthUnit) (Length, error) {
	x, u, err := ParseLength(text)
	if err != nil {
		return 0, err
	}
	if !u.Known {
		u = bare
	}
	return u.One.Times(x), nil
}

var minutesForm = lazily(`^(\d{1,3}) ?(?:°|deg|degrees) ?(\d{1,2}(?:[.,]\d{0,4})?) ?(?:'|min|minutes)?$`)

// ParseAngle reads degrees: 29.5, 29 1/2, 29.5 deg, 29°30', 29 deg 30 min.
func ParseAngle(text string) (Angle, error) {
	const want = "an angle such as 29.5, 29 1/2, 29.5 deg or 29°30'"
	refuse := &InputError{"can't read", Quoted(text), want}
	if len(text) > longestInput {
		return 0, refuse
	}
	s := strings.ToLower(strings.TrimSpace(wordBreaks.Replace(text)))
	if m := minutesForm().FindStringSubmatch(s); m != nil {
		minutes, err := ParseNumber(m[2])
		if err != nil || minutes >= 60 {
			return 0, refuse
		}
		return DegreesMinutes(digits(m[1]), minutes), nil
	}
	number, unit := splitUnit(s)
	switch unit {
	case "", "°", "deg", "degs", "degree", "degrees":
		x, err := ParseNumber(number)
		if err != nil {
			return 0, refuse
		}
		return Degrees(x), nil
	}
	return 0, refuse
}
