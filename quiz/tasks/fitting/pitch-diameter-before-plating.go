package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "pitch-diameter-before-plating", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "side", Symbol: "side", Type: problem.InputWord, Words: []string{"outside", "inside"}, Group: "side"},
		{Name: "thread", Symbol: "thread", Type: problem.InputThread, Group: "side"},
		{Name: "after", Symbol: "E", Type: problem.InputLength, Low: 0.02, High: 12},
		{Name: "plating", Symbol: "t", Type: problem.InputLength, Low: 0.00004, High: 0.005},
	},
	Tolerance: answer.Tolerance{Inch: 0.0001, MM: 0.003},
	Sources:   []string{"f1941", "plating"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		side := problem.Pick(d, calc.Outside, calc.Outside, calc.Inside)
		t := shared.FirstThread(d)
		t.Class = platedClass(d, side)
		limits, err := calc.LimitsOf(t)
		if err != nil {
			return problem.Values{}
		}
		v.SetLength("after", shared.AsPrinted(d, limits.Pitch.Middle()))
		v.SetLength("plating", platingOf(d))
		if d.Level == problem.NumbersGiven {
			v.SetWord("side", side.String())
		} else {
			v.SetThread("thread", t)
		}
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		side, err := platedSide(v)
		if err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		formula := calc.BeforePlating
		if side == calc.Inside {
			formula = calc.BeforePlatingInside
		}
		problem.Step2(w, "E0", formula, v.Length("after"), v.Length("plating"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "other-way", Work: platedBy(-4)},
		{Name: "twice", Work: platedBy(2)},
		{Name: "once", Work: platedBy(1)},
		{Name: "eight", Work: platedBy(8)},
		{Name: "none", Work: platedBy(0)},
	},
})
