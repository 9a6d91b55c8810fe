package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "whitworth-depth", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    problem.ThreadInputs[:2], // a callout of this form would not be read
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Relative: 0.007},
	Sources:   []string{"bs84"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		n := problem.Pick(d, whitworthCounts...)
		pitch, err := n.Pitch()
		if err != nil {
			return problem.Values{}
		}
		if problem.Pick(d, "count", "pitch") == "count" {
			v.Set("tpi", n.Number())
		} else {
			v.SetLength("pitch", shared.AsPrinted(d, pitch))
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		problem.Step1(w, "h", calc.WhitworthDepth, w.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "double", Work: whitworthTimes(2 * calc.WhitworthHeight * 2 / 3)},
		{Name: "sixty", Work: shared.DepthOf(calc.UnifiedExternal)},
		{Name: "national", Work: shared.DepthOf(calc.AmericanNational)},
		{Name: "triangle", Work: whitworthTimes(calc.WhitworthHeight)},
		{Name: "pitch", Work: whitworthTimes(1)},
		{Name: "two-thirds", Work: whitworthTimes(2.0 / 3)},
		{Name: "rounded-pitch", Work: shared.RoundedPitch(0.0005, func(_ problem.Values, pitch calc.Length) (calc.Length, error) {
			return calc.WhitworthDepth.Of(pitch)
		})},
	},
})

// whitworthCounts are the threads per inch of Whitworth, British fine and British pipe threads.
var whitworthCounts = []calc.ThreadsPerInch{28, 26, 24, 22, 20, 19, 18, 16, 14, 12, 11, 10, 9, 8, 7, 6, 5}

func whitworthTimes(share float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response { return answer.LengthResponse(v.Pitch().Times(share)) }
}
