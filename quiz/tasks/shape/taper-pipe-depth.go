package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "taper-pipe-depth", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    []problem.Input{pipeInput, pipeDone},
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.0125},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"b1-20-1", "pipe-table"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		s := tellPipe(d, &v)
		height, err := calc.PipeHeight.Of(s.TPI)
		if err != nil {
			return problem.Values{}
		}
		v.SetLength("done", shared.RoundLength(d, height.Times(d.Steps(0.3, 0.72, 0.01))))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		_, n := pipePitchStep(w, v)
		h := problem.Step1(w, "h", calc.PipeHeight, n)
		w.Length("L", "h - g")(h-v.Length("done"), nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "whole", Work: pipeLeft(0.8, 0)},
		{Name: "v-form", Work: pipeLeft(calc.UnifiedExternal.Factor(), 1)},
		{Name: "sharp", Work: pipeLeft(calc.HeightOfSharpV, 1)},
		{Name: "both-sides", Work: pipeLeft(1.6, 1)},
		{Name: "whole-pitch", Work: pipeLeft(1, 1)},
	},
})

// pipeLeft is the error of another share of the pitch, with what is done taken off it so
// many times.
func pipeLeft(share, times float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		left := pipePitch(v).Times(share) - v.Length("done").Times(times)
		if left <= 0 {
			return answer.NoResponse // nobody is past a depth and asks what is left
		}
		return answer.LengthResponse(left)
	}
}
