package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "diameter-dial-plunge", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    problem.ThreadInputs,
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"dial-marking", "navy"},
	Draw:      drawPlunge,
	Work:      func(v problem.Values) (problem.Working, error) { return workPlunge(v, "2 x h", calc.ReadsDiameter) },
	Errors: []problem.CommonError{
		{Name: "radius-habit", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(externalDepth(v)) }},
		{Name: "four", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(externalDepth(v).Times(4)) }},
		{Name: "cos", Work: plungeWithAngle},
	},
})

// drawPlunge draws a thread that is fed straight in.
func drawPlunge(d *problem.Draw) problem.Values {
	v := d.Values()
	d.Tell(&v, d.Thread(calc.Inch/20, calc.Inch/6), calc.Outside)
	d.Job(&v, calc.Outside)
	return v
}

// workPlunge works out the dial move of a thread fed straight in.
func workPlunge(v problem.Values, formula string, reads calc.DialReads) (problem.Working, error) {
	if err := only(v, calc.Outside); err != nil {
		return problem.Working{}, err
	}
	w := v.Working()
	h := w.Length("h", "0.613435 x P")(calc.RadialDepthOfForm(w.Pitch(), calc.UnifiedExternal))
	w.Length("m", formula)(calc.DialMove(h, reads))
	return w.Quantity()
}

// plungeWithAngle is the slip of bringing in the compound's angle out of habit.
func plungeWithAngle(v problem.Values) answer.Response {
	return answer.LengthResponse(externalDepth(v).Times(1 / habitAngle.Cos()))
}
