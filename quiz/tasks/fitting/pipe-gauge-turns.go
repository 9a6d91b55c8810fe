package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "pipe-gauge-turns", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "tpi", Symbol: "n", Type: problem.InputTPI, Low: 8, High: 27},
		{Name: "turns", Symbol: "t", Type: problem.InputPlain, Low: 0.25, High: 12},
	},
	Tolerance: answer.Tolerance{Inch: 0.0003, MM: 0.0075},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"b1-20-1", "pipe-gauging", "geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		s := problem.Pick(d, calc.PipeSizes...)
		v.Set("tpi", s.TPI.Number())
		v.Say("callout", s.Size+"-"+calc.Shortest(s.TPI.Number(), 1)+" NPT")
		v.Set("turns", d.Steps(1.5, 4, 0.25))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		w.Pitch()
		along := problem.Step2(w, "w", calc.PipeAlong, v.X("turns"), calc.ThreadsPerInch(v.X("tpi")))
		problem.Step1(w, "h", calc.PipeDepthForAlong, along)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "on-diameter", Work: gaugeShare(0, 1.0/16)},
		{Name: "along", Work: gaugeShare(0, 1)},
		{Name: "to-the-limit", Work: gaugeShare(-1, 1.0/32)},
		{Name: "and-one-more", Work: gaugeShare(1, 1.0/32)},
		{Name: "one-turn", Work: func(v problem.Values) answer.Response {
			if v.X("turns") == 2 {
				return answer.NoResponse // then that is the error of stopping at the limit
			}
			return gaugeShare(1-v.X("turns"), 1.0/32)(v)
		}},
	},
})

// gaugeShare is the error of so many turns more than there are, and of another slope.
func gaugeShare(more, slope float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		along, err := calc.PipeAlong.Of(v.X("turns")+more, calc.ThreadsPerInch(v.X("tpi")))
		return shared.Worked(along.Times(slope), err)
	}
}
