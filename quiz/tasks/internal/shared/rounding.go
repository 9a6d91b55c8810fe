package shared

import (
	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// RoundLength rounds a length to whole thousandths or hundredths of a millimetre,
// as a learner reads them off a dial.
func RoundLength(d *problem.Draw, l calc.Length) calc.Length {
	if d.System == machine.Metric {
		return calc.Millimetres(calc.Round(l.Millimetres(), 2))
	}
	return calc.Inches(calc.Round(l.Inches(), 3))
}

// near is how far two numbers may be apart that are one: a dividing or converting on the
// way leaves no more behind, and nothing that is drawn lies so close.
const near = 1e-6

// Same reports whether two numbers are one.
func Same(x, y float64) bool { return calc.Within(x, y, near) }

// Whole reports whether a number is whole.
func Whole(x float64) bool { return Same(x, calc.Round(x, 0)) }

// AsPrinted rounds a length to what a problem prints.
func AsPrinted(d *problem.Draw, l calc.Length) calc.Length {
	u := d.System.Length()
	return calc.Inches(calc.Round(l.Inches()*u.Factor, u.Places) / u.Factor)
}
