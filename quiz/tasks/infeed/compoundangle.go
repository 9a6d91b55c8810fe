package infeed

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/problem"
)

// tied reports whether a length lies just half-way between two printed ones: after
// a step that was rounded, a calculator may then print the other.
func tied(d *problem.Draw, l calc.Length) bool {
	u := d.System.Length()
	x := l.Inches() * u.Factor * math.Pow10(u.Places)
	return calc.Within(x-math.Floor(x), 0.5, 0.001)
}
