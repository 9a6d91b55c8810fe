package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// noseSide is the side of the thread that a round-nosed tool cuts.
var noseSide = problem.Input{Name: "side", Symbol: "side", Type: problem.InputWord, Words: []string{"outside", "inside"}}

// noseSideOf is the side that a problem's word names.
func noseSideOf(v problem.Values) calc.Side {
	if v.Word("side") == "inside" {
		return calc.Inside
	}
	return calc.Outside
}

// largestNose is the formula of the largest nose on a side.
func largestNose(side calc.Side) calc.Formula[func(pitch calc.Length) (calc.Length, error)] {
	if side == calc.Inside {
		return calc.LargestNoseInside
	}
	return calc.LargestNoseOutside
}

// drawNose draws the radius of a nose that can cut the thread, as inserts and radius gauges
// have it: in whole thousandths, or twentieths of a millimetre.
func drawNose(d *problem.Draw, side calc.Side, pitch calc.Length) calc.Length {
	largest, _ := largestNose(side).Of(pitch) // a pitch from the lists of threads
	if d.System == machine.Metric {
		return calc.Millimetres(d.Steps(0.05, max(0.05, largest.Millimetres()-0.025), 0.05))
	}
	return calc.Inches(d.Steps(0.002, max(0.002, largest.Inches()-0.0005), 0.001))
}
