package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "bar-stiffness", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs: []problem.Input{
		shared.LengthInput("overhang", "L1", 0.2, 60),
		{Name: "new-overhang", Symbol: "L2", Type: problem.InputLength, Low: 0.1, High: 60, Group: "new"},
		{Name: "shorter-by", Symbol: "g", Type: problem.InputLength, Low: 0, High: 59, Group: "new"},
	},
	Tolerance: answer.Tolerance{Other: 0.05},
	Sources:   []string{"isakov"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		low, high, step, unit := 1.5, 5.0, 0.25, calc.Inch
		if d.System == machine.Metric {
			low, high, step, unit = 40, 120, 5, calc.Millimetres(1)
		}
		long, short := d.Steps(low, high, step), d.Steps(low/2, high*0.8, step)
		if long/short < 1.2 || long/short > 2.6 {
			return problem.Values{}
		}
		v.SetLength("overhang", unit.Times(long))
		if d.Level == problem.DeriveFirst {
			v.SetLength("shorter-by", unit.Times(long-short))
		} else {
			v.SetLength("new-overhang", unit.Times(short))
		}
		v.Say("stickout", d.System.Length().Text(v.X("overhang"))) // the bar of the job is this bar
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		long, short := v.Length("overhang"), newOverhang(v)
		if v.Has("shorter-by") {
			w.Length("L2", "L1 - g")(short, nil)
		}
		w.Number("r", "L1 / L2", machine.PlainUnit)(long.Over(short), nil)
		problem.StepIn2(w, "x", timesUnit, calc.TimesStiffer, long, short)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "linear", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(shortening(v)) }},
		{Name: "square", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(shortening(v) * shortening(v)) }},
		{Name: "inverse", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(1 / (shortening(v) * shortening(v) * shortening(v)))
		}},
	},
})

var timesUnit = machine.Unit{Name: "times", Factor: 1, Places: 2}

func newOverhang(v problem.Values) calc.Length {
	if v.Has("shorter-by") {
		return v.Length("overhang") - v.Length("shorter-by")
	}
	return v.Length("new-overhang")
}

// shortening is the old overhang over the new one.
func shortening(v problem.Values) float64 { return v.Length("overhang").Over(newOverhang(v)) }
