package quiz

import (
	"strings"

	"scratchpass/calc"
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
func readQuantity(u Unit, text string) (Reply, error) {
	want := example(u)
	if len(text) > 200 {
		return Reply{}, unread(text, want)
	}
	if symbol, number, ok := strings.Cut(text, "="); ok && !strings.ContainsAny(symbol, "0123456789") { // P = 0.0556
		text = number
	}
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
	switch u.Name {
	case "percent":
		text = trimUnit(text, "%")
	case "": // a ratio of gears: 8:10
		text = strings.Replace(text, ":", "/", 1)
	}
	x, err := calc.ParseNumber(trimUnit(trimUnit(text, u.Name), u.One))
	if err != nil {
		return Reply{}, unread(text, want)
	}
	return Reply{X: x / u.Factor}, nil
}

// example is what a readable answer looks like.
func example(u Unit) string {
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
func otherUnits(u Unit) []float64 {
	switch u.Name {
	case "in":
		return []float64{1000, calc.MillimetresPerInch} // thou or mm typed as inches
	case "mm":
		return []float64{1 / calc.MillimetresPerInch, 1000 / calc.MillimetresPerInch}
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
