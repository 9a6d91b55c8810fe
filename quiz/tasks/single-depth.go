package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "single-depth", Stage: quiz.Shape,
	Inputs:  quiz.ThreadInputs,
	Scrap:   quiz.ScrapHigh,
	Tol:     quiz.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources: []string{"navy", "b1-1"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/28, calc.Inch/6), calc.Outside)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := only(v, calc.Outside); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		w.Length("h", "0.613435 x P")(calc.RadialDepthOfForm(w.Pitch(), calc.UnifiedExternal))
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "double", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(2)) }},
		{Name: "sharp-v", Work: depthOf(calc.SharpV)},
		{Name: "american-national", Convention: true, Work: depthOf(calc.AmericanNational)},
		{Name: "basic", Convention: true, Work: depthOf(calc.BasicInternal)},
		{Name: "pitch", Work: func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch()) }},
	},
})

// depthOf is the slip of taking the depth of another form.
func depthOf(f calc.Form) func(quiz.Values) quiz.Reply {
	return func(v quiz.Values) quiz.Reply { return quiz.L(v.Pitch().Times(f.Factor())) }
}
