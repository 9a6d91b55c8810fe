package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// drawPlunge draws a thread that is fed straight in.
func drawPlunge(d *problem.Draw) problem.Values {
	v := d.Values()
	d.Tell(&v, shared.FirstThread(d), calc.Outside)
	d.Job(&v, calc.Outside)
	return v
}

// workPlunge works out the move of a thread fed straight in, on a dial for which the
// formula holds.
func workPlunge(v problem.Values, move calc.Formula[func(radial calc.Length) (calc.Length, error)]) (problem.Working, error) {
	if err := shared.OnlySide(v, calc.Outside); err != nil {
		return problem.Working{}, err
	}
	w := v.Working()
	h := problem.Step1(w, "h", calc.ExternalDepth, w.Pitch())
	problem.Step1(w, "m", move, h)
	return w.Quantity()
}

// plungeInside is the error of taking the factor of an inside thread, so many times.
func plungeInside(times float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		h, err := calc.RadialDepthOfForm(v.Pitch(), calc.BasicInternal)
		return shared.Worked(h.Times(times), err)
	}
}

// plungeRounded is the error of rounding the pitch, on a dial that moves so many depths.
func plungeRounded(times float64) func(problem.Values) answer.Response {
	return shared.RoundedPitch(0.001, func(_ problem.Values, pitch calc.Length) (calc.Length, error) {
		h, err := calc.ExternalDepth.Of(pitch)
		return h.Times(times), err
	})
}

// plungeWithAngle is the error of bringing in the compound's angle out of habit.
func plungeWithAngle(v problem.Values) answer.Response {
	return shared.Worked(calc.TravelForDepth.Of(shared.ExternalDepth(v), shared.HabitAngle))
}
