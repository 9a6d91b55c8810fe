package setup

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// The rule in metres per minute and millimetres.
var metricTurning = turningRule{
	formula: calc.TurningSpeedMM, size: calc.Millimetres, speed: calc.MetresPerMinute,
	diameters: stepRange{10, 50, 1}, threads: [2]calc.Length{calc.Millimetres(12), calc.Millimetres(42)}, speeds: stepRange{18, 34, 1},
}

var _ = shared.Register(threadingSpeed(metricTurning, problem.Task{
	Name:    "threading-speed-metric",
	Systems: []machine.System{machine.Metric},
	Inputs: shared.Inputs(turnedSize,
		problem.Input{Name: "turning-speed", Symbol: "V", Type: problem.InputPlain, Low: 3, High: 300}),
	Errors: []problem.CommonError{
		{Name: "inch", Work: metricTurning.times(12.0 / 1000)}, // the 12 of the rule for feet and inches
		{Name: "no-pi", Work: metricTurning.times(math.Pi)},
		{Name: "no-quarter", Work: metricTurning.times(1 / calc.ThreadingShare)},
		{Name: "radius", Work: metricTurning.times(2)},
	},
}))
