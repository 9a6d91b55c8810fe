package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// wireInput is the diameter of the measuring wires.
var wireInput = shared.LengthInput("wire", "W", 0.005, 0.6)

// tellMeasured tells a thread that is being measured: plainly, or by its callout.
func tellMeasured(d *problem.Draw, v *problem.Values, t calc.Designation) {
	if d.Level == problem.NumbersGiven {
		d.Tell(v, t, calc.Outside)
		return
	}
	d.TellAs(v, t, calc.Outside, "callout")
}

// middlePitchDiameter is the middle of the limits of the thread as it was told, or
// of the usual class where no class was told.
func middlePitchDiameter(d *problem.Draw, v problem.Values, t calc.Designation) (calc.Length, error) {
	l, err := calc.LimitsOf(withClass(v, t))
	return shared.AsPrinted(d, l.Pitch.Middle()), err
}

// drawWire draws a wire that can be used: the best one as sets are marked, or one
// a little larger that was at hand.
func drawWire(d *problem.Draw, pitch calc.Length) calc.Length {
	wires, _ := calc.WiresFor(pitch) // a pitch from the lists of threads
	if d.Level == problem.NumbersGiven || d.IntN(2) == 0 {
		return shared.AsPrinted(d, wires.Best)
	}
	return shared.RoundLength(d, wires.Best.Times(d.Steps(1.02, 1.2, 0.02)))
}

// overWires adds wires and a share of the pitch to a diameter: an error's reading.
func overWires(v problem.Values, diameter calc.Length, wires, share float64) answer.Response {
	return answer.LengthResponse(diameter + v.Length("wire").Times(wires) + v.Pitch().Times(share))
}
