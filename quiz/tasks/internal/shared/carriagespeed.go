package shared

import (
	"math"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// RpmInput is the speed of the spindle.
var RpmInput = problem.Input{Name: "rpm", Symbol: "v", Type: problem.InputPlain, Low: 1, High: 5000}

// SpeedOf is the spindle speed that a problem gives.
func SpeedOf(v problem.Values) calc.SpindleSpeed { return calc.SpindleSpeed(v.X("rpm")) }

// DrawSpeed draws a slow spindle speed, on the job one that the lathe has.
func DrawSpeed(d *problem.Draw) int {
	speeds := d.Lathe.Speeds
	if len(speeds) == 0 {
		speeds = machine.DefaultLathe(d.System).Speeds
	}
	if d.Level == problem.OnTheJob {
		return speeds[d.IntN(min(4, len(speeds)))]
	}
	return 5 * d.Between(9, 28)
}

// fastestCarriage is as fast as a carriage may go for a first thread, in inches a
// second: a hand can follow it.
const fastestCarriage = 0.13

// TooFast reports whether a beginner could not follow the carriage.
func TooFast(lead calc.Length, rpm int) bool {
	return lead.Times(float64(rpm)/60) > fastestCarriage
}

// JobAt is a job whose spindle runs at the speed that the problem is about. It is false
// where a length does not go on such work, see JobWith.
func JobAt(d *problem.Draw, v *problem.Values, rpm int, length calc.Length) bool {
	v.Say("rpm", strconv.Itoa(rpm))
	return d.JobWith(v, calc.Outside, length)
}

// UpsideDown is the number of threads in an inch or a millimetre, taken for the
// length of one.
func UpsideDown(v problem.Values) calc.Length {
	one := calc.Inch
	if v.System == machine.Metric {
		one = calc.Millimetres(1)
	}
	return one.Times(one.Over(v.Pitch()))
}

// Halfway reports whether a number lies just between two printed ones. A pitch that
// goes on for ever (1/12) is printed rounded, and what follows from the printed one
// then lands on either side.
func Halfway(held float64, u machine.Unit) bool {
	x := held * u.Factor * math.Pow10(u.Places)
	return Same(x-math.Floor(x), 0.5)
}
