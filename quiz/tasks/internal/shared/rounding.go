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

// AsPrinted rounds a length to what a problem prints.
func AsPrinted(d *problem.Draw, l calc.Length) calc.Length {
	u := d.System.Length()
	return calc.Inches(calc.Round(l.Inches()*u.Factor, u.Places) / u.Factor)
}
