package setup

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// aSecond is the unit of a carriage speed, which is held in inches a second.
func aSecond(s machine.System) machine.Unit {
	if s == machine.Metric {
		return machine.Unit{Name: "mm/s", Factor: calc.MillimetresPerInch, Places: 2}
	}
	return machine.Unit{Name: "in/s", Factor: 1, Places: 3}
}

// gapOnWork is how many times a gap at the least goes into what stands out of the jaws:
// there must be a thread beside it.
const gapOnWork = 3

// drawGap draws the way from the end of a thread to a shoulder.
func drawGap(d *problem.Draw) calc.Length {
	if d.System == machine.Metric {
		return calc.Millimetres(d.Steps(3, 10, 0.5))
	}
	return calc.Inches(d.Steps(0.125, 0.375, 0.0625))
}

// apartFrom is the response of an error unless its number is too near another error's to
// tell which was made; the words of the other then name both causes.
func apartFrom(other, x, apart float64) answer.Response {
	if math.Abs(x-other) < apart {
		return answer.NoResponse
	}
	return answer.NumberResponse(x)
}
