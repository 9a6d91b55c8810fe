package quiz

import (
	"strings"
	"unicode"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// quantity is one number with a unit.
type quantity struct{}

var _ Kind = quantity{}

func (quantity) Name() string { return "quantity" }

func (quantity) Read(a *Answer, text string) (Reply, error) {
	return readQuantity(a.Unit, text)
}

// readQuantity reads a number in the unit asked for. A length may carry another
// unit of length; an angle may carry minutes.
func readQuantity(u machine.Unit, text string) (Reply, error) {
	want := example(u)
	if len(text) > 200 {
		return Reply{}, unread(text, want)
	}
	text = plainNumber(text)
	written := text
	switch u.Name {
	case "in", "mm":
		x, written, err := calc.ParseLength(text)
		if err != nil {
			return Reply{}, unread(text, want)
		}
		if written.Known {
			return Reply{X: written.One.Times(x).Inches(), Unit: written.Name}, nil
		}
		return Reply{X: x / u.Factor}, nil
	case "deg":
		angle, err := calc.ParseAngle(text)
		if err != nil {
			return Reply{}, unread(text, want)
		}
		return Reply{X: angle.Degrees()}, nil
	}
	for _, other := range sameUnit[u.Name] {
		text = trimUnit(text, other)
	}
	if u.Name == "" { // a ratio of gears: 8:10, 1:1.75
		if x, ok := ratio(text); ok {
			return Reply{X: x / u.Factor}, nil
		}
	}
	number := trimUnit(trimUnit(text, u.Name), u.One)
	x, err := calc.ParseNumber(number)
	if err != nil {
		return Reply{}, unread(text, want)
	}
	r := Reply{X: x / u.Factor}
	if number != strings.TrimSpace(written) { // its unit stood behind it
		r.Unit = u.Name
	}
	return r, nil
}

// sameUnit are other ways of writing a unit.
var sameUnit = map[string][]string{
	"percent": {"%"}, "rpm": {"rev/min", "revs/min", "r/min", "revs", "/min"}, "mm/s": {"mm/sec", "mm per second"}, "in/s": {"in/sec", "in per second", "inches per second"},
	"passes": {"cuts"}, "marks": {"lines"},
}

// plainNumber takes off what people write round a number: P = 1/12 = 0.0833, about 26,
// minus 0.0012.
func plainNumber(text string) string {
	text = strings.TrimSpace(text)
	if parts := strings.Split(text, "="); len(parts) > 1 && strings.IndexFunc(text, unicode.IsLetter) == 0 &&
		!strings.ContainsFunc(strings.Join(parts[1:len(parts)-1], ""), func(r rune) bool { return unicode.IsLetter(r) || r == ',' }) {
		text = parts[len(parts)-1]
	}
	text = strings.TrimSpace(text)
	for _, word := range []string{"about ", "approx. ", "approx ", "ca. ", "~"} {
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

// example is what a readable answer looks like.
func example(u machine.Unit) string {
	switch u.Name {
	case "in":
		return "a length such as 0.0556, 55.6 thou or 3/64"
	case "mm":
		return "a length such as 1.411, 1.411 mm or 0.0556 in"
	case "deg":
		return "an angle such as 29.5 or 29°30'"
	case "":
		return "a number such as 3 or 0.85"
	}
	if u.Count || u.Places == 0 {
		return "a whole number, such as 12 " + u.Name
	}
	return "a number, such as 12.5 " + u.Name
}

func (quantity) Same(_ *Answer, x, y Reply, tol float64) bool { return calc.Within(x.X, y.X, tol) }

func (quantity) Show(a *Answer, r Reply) string { return a.Unit.Text(r.X) }

// otherUnits are the units that a bare number is mistaken for: the number is right,
// its unit is not. Each is a factor on the shown number.
func otherUnits(u machine.Unit) []float64 {
	switch u.Name {
	case "in":
		return []float64{1000, calc.MillimetresPerInch} // thou or mm typed as inches
	case "mm":
		return []float64{1 / calc.MillimetresPerInch, 1000 / calc.MillimetresPerInch}
	case "percent":
		return []float64{0.01} // 0.81 for 81 percent
	}
	return nil
}

// unitSlip reports whether the number would be right in another unit.
func (a *Answer) unitSlip(r Reply) bool {
	if _, ok := a.Kind.(quantity); !ok || a.Key.X == 0 {
		return false
	}
	for _, factor := range otherUnits(a.Unit) {
		if r.Unit == "" && calc.Within(r.X/factor, a.Key.X, a.Tol) {
			return true // 55.6 where 0.0556 in was meant
		}
	}
	if r.Unit == "" || r.Unit == a.Unit.Name {
		return false
	}
	for name, one := range map[string]float64{"in": 1, "mm": 1 / calc.MillimetresPerInch, "thou": 0.001} {
		if r.Unit == name && calc.Within(r.X/one/a.Unit.Factor, a.Key.X, a.Tol) {
			return true // "0.0556 mm": the number of the key with another unit
		}
	}
	return false
}
