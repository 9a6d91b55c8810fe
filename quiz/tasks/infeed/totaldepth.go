package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// totalOrThread is the total infeed, or the thread that it is estimated from.
var totalOrThread = shared.Inputs(problem.ThreadInputs, problem.Input{Name: "total", Symbol: "T", Type: problem.InputLength, Low: 0.01, High: 0.5, Group: "thread"})

// tellTotal gives the total infeed, or above the first level a thread.
func tellTotal(d *problem.Draw, v *problem.Values) {
	if d.Level == problem.NumbersGiven {
		v.SetLength("total", d.Length(36, 64, 90, 165))
		return
	}
	d.Tell(v, d.Thread(calc.Inch/20, calc.Inch/7), calc.Outside)
}

// totalStep adds the step to the estimated total where a thread is given.
func totalStep(w *problem.Working, v problem.Values) calc.Length {
	if v.Has("total") {
		return v.Length("total")
	}
	return problem.Step1(w, "T", calc.RuleOfThumb, w.Pitch())
}

// totalOf is the total of totalStep, for common errors.
func totalOf(v problem.Values) calc.Length {
	if v.Has("total") {
		return v.Length("total")
	}
	total, _ := calc.RuleOfThumb.Of(v.Pitch()) // the inputs' range lies within the formula's
	return total
}
