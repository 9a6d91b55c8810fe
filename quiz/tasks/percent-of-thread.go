package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "percent-of-thread", Stage: quiz.Shape,
	Inputs:  inputs(quiz.ThreadInputs, nominalInput, length("bore", "B", 0.04, 12)),
	Tol:     quiz.Tolerance{Else: 0.5},
	Sources: []string{"b1-1", "geometry"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		t := firstThread(d)
		tellSized(d, &v, t, calc.Inside)
		least, _ := calc.BasicInternalMinor(t.Nominal, t.Pitch) // a standard thread
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
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := only(v, calc.Inside); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		nominal, pitch := nominalStep(w, v), w.Pitch()
		w.Number("p", "100 x (D - B) / (1.082532 x P)", percentUnit)(calc.PercentOfThread(nominal, v.Length("bore"), pitch, false))
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "american-national", Convention: true, Work: percentBy(2 * calc.AmericanNational.Factor())},
		{Name: "one-side", Work: percentBy(calc.BasicInternal.Factor())},
		{Name: "bore-ratio", Work: func(v quiz.Values) quiz.Reply {
			nominal, _ := nominalTold(v) // the key has been worked out: no error here
			return quiz.X(v.Length("bore").Over(nominal) * 100)
		}},
	},
})

var percentUnit = machine.Unit{Name: "percent", Factor: 1, Places: 1}

// percentBy is the percent of thread with another share of the pitch as the whole.
func percentBy(whole float64) func(quiz.Values) quiz.Reply {
	return func(v quiz.Values) quiz.Reply {
		nominal, _ := nominalTold(v) // the key has been worked out: no error here
		return quiz.X((nominal - v.Length("bore")).Over(v.Pitch().Times(whole)) * 100)
	}
}
