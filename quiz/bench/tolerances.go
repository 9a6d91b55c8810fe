package bench

import (
	"math"

	"scratchpass/calc"
)

// How near two numbers come that are the same but for what working them out has left
// behind.
const (
	hair      = calc.Length(1e-9) // places and depths: the last bits of a sum
	sizeSlack = calc.Length(1e-6) // sizes that were written or summed up over many passes: less than anyone measures
	sameLine  = calc.Length(1e-5) // passes that run in one groove
	shareOff  = 1e-6              // numbers of steps, shares of a turn, speeds
)

// wholeDown is the number of whole steps in a quotient, wholeUp that of the steps that it
// goes into: what dividing left behind makes no further step.
func wholeDown(steps float64) float64 { return math.Floor(steps + shareOff) }
func wholeUp(steps float64) float64   { return math.Ceil(steps - shareOff) }
