package setup

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// The rule in feet per minute and inches.
var inchTurning = turningRule{
	formula: calc.TurningSpeed, size: calc.Inches, speed: calc.FeetPerMinute,
	diameters: stepRange{0.375, 2, 0.0625}, threads: [2]calc.Length{calc.Inches(0.5), calc.Inches(1.75)}, speeds: stepRange{60, 120, 2},
}

var _ = shared.Register(threadingSpeed(inchTurning, problem.Task{
	Name:    "threading-speed",
	Systems: []machine.System{machine.Imperial},
	Inputs: shared.Inputs(turnedSize,
		problem.Input{Name: "turning-speed", Symbol: "V", Type: problem.InputPlain, Low: 10, High: 1000}),
	Errors: []problem.CommonError{
		{Name: "no-quarter", Work: inchTurning.times(1 / calc.ThreadingShare)},
		{Name: "no-pi", Work: inchTurning.times(math.Pi)},
		{Name: "no-12", Work: inchTurning.times(1.0 / 12)},
		{Name: "radius", Work: inchTurning.times(2)},
	},
}))
