package answer

import (
	"strconv"
	"strings"
	"unicode"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// readNumber reads a number in the unit asked for. A length may carry another unit of
// length; an angle may carry minutes.
func readNumber(u machine.Unit, text string) (Response, error) {
	typed := text
	if len(text) > longest {
		return Response{}, unreadNumber(u, typed)
	}
	text = ungrouped(u, plainNumber(text))
	written := text
	switch u.Name {
	case machine.InchUnit.Name, machine.MMUnit.Name:
		x, written, err := calc.ParseLength(text)
		if err != nil {
			return Response{}, unreadNumber(u, text)
		}
		if written.Known {
			return Response{X: written.One.Times(x).Inches(), Unit: written.Name}, nil
		}
		return Response{X: x / u.Factor}, nil
	case machine.DegreeUnit.Name:
		angle, err := calc.ParseAngle(text)
		if err != nil {
			return Response{}, unreadNumber(u, text)
		}
		return Response{X: angle.Degrees()}, nil
	}
	for _, other := range sameUnit[u.Name] {
		text = trimUnit(text, other)
	}
	if u.Name == "" { // a ratio of gears: 8:10, 1:1.75
		if x, ok := ratio(text); ok {
			return Response{X: x / u.Factor}, nil
		}
	}
	number := trimUnit(trimUnit(text, u.Name), u.One)
	x, err := calc.ParseNumber(number)
	if err != nil {
		return Response{}, unreadNumber(u, text)
	}
	r := Response{X: x / u.Factor}
	if number != strings.TrimSpace(written) { // its unit stood behind it
		r.Unit = u.Name
	}
	return r, nil
}

// sameUnit are other ways of writing a unit.
var sameUnit = map[string][]string{
	"percent": {"%"}, "rpm": {"rev/min", "revs/min", "r/min", "revs", "/min"},
	"mm/s": {"mm/sec", "mm per second"}, "in/s": {"in/sec", "in per second", "inches per second"},
	"passes": {"cuts"}, "marks": {"lines"},
}

// plainNumber takes off what people write round a number: P = 1/12 = 0.0833, = 0.0556,
// about 26, minus 0.0012.
func plainNumber(text string) string {
	text = strings.TrimSpace(text)
	if parts := strings.Split(text, "="); len(parts) > 1 && (parts[0] == "" || strings.IndexFunc(text, unicode.IsLetter) == 0) &&
		!strings.ContainsFunc(strings.Join(parts[1:len(parts)-1], ""), func(r rune) bool { return unicode.IsLetter(r) || r == ',' }) {
		text = parts[len(parts)-1]
	}
	text = strings.TrimSpace(text)
	for _, word := range []string{"about ", "approx. ", "approx ", "ca. ", "~", "\u2248"} {
		if n := len(word); len(text) > n && strings.EqualFold(text[:n], word) {
			text = strings.TrimSpace(text[n:])
		}
	}
	for _, minus := range []string{"minus ", "- ", "\u2212 ", "\u2013 "} {
		if n := len(minus); len(text) > n && strings.EqualFold(text[:n], minus) {
			return "-" + strings.TrimSpace(text[n:])
		}
	}
	return text
}

// ratio reads 8:10, 1:1.75 or 4 to 7.
func ratio(text string) (float64, bool) {
	for _, between := range []string{":", " to "} {
		over, under, ok := strings.Cut(text, between)
		if !ok {
			continue
		}
		x, err := calc.ParseNumber(over)
		y, err2 := calc.ParseNumber(under)
		if err == nil && err2 == nil && x > 0 && y > 0 {
			return x / y, true
		}
	}
	return 0, false
}

// unreadNumber is the error for a text that is no number of this unit.
func unreadNumber(u machine.Unit, text string) error {
	switch u.Name {
	case machine.InchUnit.Name:
		return unread(text, "want-in")
	case machine.MMUnit.Name:
		return unread(text, "want-mm")
	case machine.DegreeUnit.Name:
		return unread(text, "want-deg")
	case "":
		return unread(text, "want-plain")
	}
	if u.Count || u.Places == 0 {
		return unread(text, "want-whole", "unit", u.Name)
	}
	return unread(text, "want-number", "unit", u.Name)
}

// trimUnit takes a unit's name off the end of a text, in any case.
func trimUnit(text, unit string) string {
	text = strings.TrimSpace(text)
	if n := len(text) - len(unit); unit != "" && n > 0 && strings.EqualFold(text[n:], unit) {
		return strings.TrimSpace(text[:n])
	}
	return text
}

// typed is a number as it is printed, in held units.
func (e *Expected) typed(held float64) float64 {
	x, _ := strconv.ParseFloat(e.Unit.Fixed(held), 64) // Fixed prints nothing else
	return x / e.Unit.Factor
}
