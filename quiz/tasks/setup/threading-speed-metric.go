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
	Name: "threading-speed-metric", Stage: problem.SetUp, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: shared.Inputs(turnedSize,
		problem.Input{Name: "turning-speed", Symbol: "V", Type: problem.InputPlain, Low: 3, High: 300}),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Relative: 0.05},
	Systems:   []machine.System{machine.Metric},
	Sources:   []string{"tm-1-420", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		if !tellSize(d, &v, calc.Millimetres(d.Steps(10, 50, 1)), calc.Millimetres(12), calc.Millimetres(42)) {
			return problem.Values{}
		}
		v.Set("turning-speed", d.Steps(18, 34, 1))
		if tooQuick(v) {
			return problem.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		return threadingSpeed(v, "1000 x V / (3.14159265 x D)", calc.MetresPerMinute(v.X("turning-speed")))
	},
	Errors: []problem.CommonError{
		{Name: "inch", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(12 * metresOverMillimetres(v) / math.Pi / 4)
		}},
		{Name: "no-pi", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(1000 * metresOverMillimetres(v) / 4)
		}},
		{Name: "no-quarter", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(1000 * metresOverMillimetres(v) / math.Pi)
		}},
		{Name: "radius", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(2 * 1000 * metresOverMillimetres(v) / math.Pi / 4)
		}},
	},
})

func metresOverMillimetres(v problem.Values) float64 {
	return v.X("turning-speed") / sizeOf(v).Millimetres()
}
