package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "find-where-you-are", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: []problem.Input{shared.LengthInput("total", "T", 0.01, 0.5), shared.LengthInput("dial", "r", 0, 0.5),
		{Name: "believed", Symbol: "b", Type: problem.InputLength, Low: 0, High: 0.5, Extra: true},
		turnInput},
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		dial := d.Length(30, 80, 80, 190)
		v.SetLength("dial", dial)
		v.SetLength("believed", dial-d.Length(6, 22, 16, 60))
		v.SetLength("total", dial+d.Length(8, 35, 20, 90))
		v.SetLength("turn", turnAbove(d, v.Length("total")))
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if total, turn := v.Length("total"), v.Length("turn"); total > turn || v.Length("dial") > turn {
			return problem.Working{}, &calc.InputError{What: "total infeed", Got: calc.LengthText(total),
				Want: "no more than one turn of the dial, " + calc.LengthText(turn) + "; beyond that the dial alone can't tell, so read the log and ask"}
		}
		w := v.Working()
		w.Length("L", "T - r")(v.Length("total")-v.Length("dial"), nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "memory", Work: func(v problem.Values) answer.Response { return believed(v, func(r, b float64) float64 { return b }) }},
		{Name: "average", Work: func(v problem.Values) answer.Response {
			return believed(v, func(r, b float64) float64 { return (r + b) / 2 })
		}},
		{Name: "adds-both", Work: func(v problem.Values) answer.Response {
			return believed(v, func(r, b float64) float64 { return r + b })
		}},
	},
})

// believed is what is left when someone takes the slide to be elsewhere.
func believed(v problem.Values, at func(dial, believed float64) float64) answer.Response {
	if !v.Has("believed") {
		return answer.NoResponse
	}
	return answer.NumberResponse(v.X("total") - at(v.X("dial"), v.X("believed")))
}

// turnAbove is the smallest usual dial turn that holds a total.
func turnAbove(d *problem.Draw, total calc.Length) calc.Length {
	turns := []calc.Length{0.100, 0.125, 0.200}
	if d.System == machine.Metric {
		turns = []calc.Length{calc.Millimetres(2), calc.Millimetres(2.5), calc.Millimetres(3)}
	}
	for _, turn := range turns {
		if total <= turn {
			return turn
		}
	}
	return turns[len(turns)-1]
}
