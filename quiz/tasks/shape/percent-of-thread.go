package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "percent-of-thread", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.NominalInput, shared.LengthInput("bore", "B", 0.04, 12)),
	Tolerance: answer.Tolerance{Other: 0.5},
	Sources:   []string{"b1-1", "geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		shared.TellSized(d, &v, t, calc.Inside)
		least, _ := calc.BasicBore.Of(t.Nominal, t.Pitch) // a standard thread
		bore := t.Nominal - (t.Nominal - least).Times(d.Steps(0.6, 0.98, 0.01))
		if d.System == machine.Metric {
			bore = calc.Millimetres(calc.Round(bore.Millimetres(), 2))
		} else {
			bore = calc.Inches(calc.Round(bore.Inches(), 3))
		}
		v.SetLength("bore", bore)
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Inside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		nominal, pitch := shared.NominalStep(w, v), w.Pitch()
		problem.StepIn3(w, "p", percentUnit, calc.ThreadPercent, nominal, v.Length("bore"), pitch)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "american-national", Convention: true, Work: percentBy(calc.ThreadPercentOld.Of, 1)},
		{Name: "one-side", Work: percentBy(calc.ThreadPercent.Of, 2)}, // the height on one side as the whole
		{Name: "bore-ratio", Work: func(v problem.Values) answer.Response {
			nominal, _ := shared.NominalTold(v) // the key has been worked out: no error here
			return answer.NumberResponse(v.Length("bore").Over(nominal) * 100)
		}},
	},
})

var percentUnit = machine.Unit{Name: "percent", Factor: 1, Places: 1}

// percentBy is so many times the percent of thread by one way of counting it.
func percentBy(of func(nominal, bore, pitch calc.Length) (float64, error), times float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		nominal, _ := shared.NominalTold(v) // the key has been worked out: no error here
		percent, err := of(nominal, v.Length("bore"), v.Pitch())
		return shared.Worked(percent*times, err)
	}
}
