package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// divisionsUnit counts the spaces between the lines of a dial.
var divisionsUnit = machine.Unit{Name: "divisions", One: "division", Factor: 1, Places: 1, Count: true}

var _ = shared.Register(problem.Task{
	Name: "dial-divisions", Stage: problem.Infeed, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: []problem.Input{
		shared.LengthInput("infeed", "i", 0.0005, 0.5),
		{Name: "division", Symbol: "G", Type: problem.InputLength, Low: 0.0001, High: 0.02, Group: "dial"},
		{Name: "turn", Symbol: "R", Type: problem.InputLength, Low: 0.02, High: 0.5, Group: "dial"},
		{Name: "lines", Symbol: "Q", Type: problem.InputCount, Low: 10, High: 1000, Extra: true}, // goes with turn
	},
	Tolerance: answer.Tolerance{Other: 0.25},
	Sources:   []string{"dial-marking"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		dial := drawDial(d)
		if d.Level == problem.NumbersGiven {
			v.SetLength("division", dial.Division)
		} else {
			v.SetLength("turn", dial.Turn)
			v.Set("lines", calc.Round(dial.Turn.Over(dial.Division), 0))
		}
		infeed := dial.Division.Times(float64(d.Between(3, 24)))
		if infeed < calc.Inches(0.003) || infeed > calc.Inches(0.0205) { // a cut that someone might take
			return problem.Values{}
		}
		v.SetLength("infeed", infeed)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		division := divisionOf(v)
		if v.Has("turn") {
			if !v.Has("lines") {
				return problem.Working{}, &calc.InputError{What: "lines", Got: "not given", Want: "how many lines the dial has in one turn"}
			}
			division = w.Length("G", "R / Q")(division, nil)
		}
		w.Number("K", "i / G", divisionsUnit)(v.Length("infeed").Over(division), nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "mult", Work: func(v problem.Values) answer.Response {
			u := v.System.Length()
			return answer.NumberResponse(v.X("infeed") * u.Factor * divisionOf(v).Inches() * u.Factor)
		}},
		{Name: "ten-low", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(divisionsOf(v) / 10) }},
		{Name: "ten-high", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(divisionsOf(v) * 10) }},
		{Name: "fine-lines", Work: func(v problem.Values) answer.Response {
			fine := calc.Thou
			if v.System == machine.Metric {
				fine = calc.Millimetres(0.01)
			}
			if shared.Same(divisionOf(v).Over(fine), 1) {
				return answer.NoResponse // on this dial that is right
			}
			return answer.NumberResponse(v.Length("infeed").Over(fine))
		}},
	},
})

// drawDial draws a dial as lathes have it; as on the job it is the learner's
// compound, unless that has the finest lines.
func drawDial(d *problem.Draw) machine.Dial {
	finest := calc.Thou
	if d.System == machine.Metric {
		finest = calc.Millimetres(0.01)
	}
	if own := d.Lathe.Compound; d.Level == problem.OnTheJob && !shared.Same(own.Division.Over(finest), 1) {
		return own // with the finest lines the commonest mistake would not show
	}
	// Turn and lines; none has the finest lines, on which fine-lines would be right.
	common := [][2]float64{{0.100, 50}, {0.200, 100}, {0.125, 50}, {0.200, 80}, {0.100, 200}}
	if d.System == machine.Metric {
		common = [][2]float64{{1, 50}, {2, 100}, {2, 40}, {2.5, 50}, {4, 200}}
	}
	of := problem.Pick(d, common...)
	turn := calc.Inches(of[0])
	if d.System == machine.Metric {
		turn = calc.Millimetres(of[0])
	}
	return machine.Dial{Turn: turn, Division: turn.Times(1 / of[1])}
}

// divisionOf is what one line of the dial stands for.
func divisionOf(v problem.Values) calc.Length {
	if v.Has("turn") {
		return v.Length("turn").Times(1 / v.X("lines"))
	}
	return v.Length("division")
}

func divisionsOf(v problem.Values) float64 { return v.Length("infeed").Over(divisionOf(v)) }
