package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "diameter-dial-plunge", Stage: quiz.Infeed,
	Inputs:  quiz.ThreadInputs,
	Tol:     quiz.Tolerance{Inch: 0.001, MM: 0.025},
	Scrap:   quiz.ScrapHigh,
	Sources: []string{"dial-marking", "navy"},
	Draw:    drawPlunge,
	Work:    func(v quiz.Values) (quiz.Working, error) { return workPlunge(v, "2 x h", calc.ReadsDiameter) },
	Slips: []quiz.Slip{
		{Name: "radius-habit", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v)) }},
		{Name: "four", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v).Times(4)) }},
		{Name: "cos", Work: plungeWithAngle},
	},
})

// drawPlunge draws a thread that is fed straight in.
func drawPlunge(d *quiz.Draw) quiz.Values {
	v := d.Values()
	d.Tell(&v, d.Thread(calc.Inch/20, calc.Inch/6), calc.Outside)
	d.Job(&v, calc.Outside)
	return v
}

// workPlunge works out the dial move of a thread fed straight in.
func workPlunge(v quiz.Values, formula string, reads calc.DialReads) (quiz.Working, error) {
	if err := only(v, calc.Outside); err != nil {
		return quiz.Working{}, err
	}
	w := v.Working()
	h := w.Length("h", "0.613435 x P")(calc.RadialDepthOfForm(w.Pitch(), calc.UnifiedExternal))
	w.Length("m", formula)(calc.DialMove(h, reads))
	return w.Quantity()
}

// plungeWithAngle is the slip of bringing in the compound's angle out of habit.
func plungeWithAngle(v quiz.Values) quiz.Reply {
	return quiz.L(externalDepth(v).Times(1 / habitAngle.Cos()))
}
