package setup

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "threading-speed", Stage: problem.SetUp, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: shared.Inputs(turnedSize,
		problem.Input{Name: "turning-speed", Symbol: "V", Type: problem.InputPlain, Low: 10, High: 1000}),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Relative: 0.05},
	Systems:   []machine.System{machine.Imperial},
	Sources:   []string{"tm-1-420", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		if !tellSize(d, &v, calc.Inches(d.Steps(0.375, 2, 0.0625)), calc.Inches(0.5), calc.Inches(1.75)) {
			return problem.Values{}
		}
		v.Set("turning-speed", d.Steps(60, 110, 5))
		if tooQuick(v) {
			return problem.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		return threadingSpeed(v, "12 x V / (3.14159265 x D)", calc.FeetPerMinute(v.X("turning-speed")))
	},
	Errors: []problem.CommonError{
		{Name: "no-quarter", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(12 * feetOverInches(v) / math.Pi)
		}},
		{Name: "no-pi", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(12 * feetOverInches(v) / 4) }},
		{Name: "no-12", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(feetOverInches(v) / math.Pi / 4)
		}},
		{Name: "radius", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(2 * 12 * feetOverInches(v) / math.Pi / 4)
		}},
	},
})

func feetOverInches(v problem.Values) float64 { return v.X("turning-speed") / sizeOf(v).Inches() }

// fastestFirstThread is the highest spindle speed that a problem leads to.
const fastestFirstThread = 150
