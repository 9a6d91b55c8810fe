package infeed

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// flankAngle is how far each flank of a 60-degree thread leans from straight in.
const flankAngle calc.Angle = 30

var _ = shared.Register(problem.Task{
	Name: "alternate-flank-shift", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: []problem.Input{
		shared.LengthInput("infeed", "i", 0.001, 0.2),
		{Name: "dial-reads", Symbol: "dial", Type: problem.InputWord, Words: []string{"diameter", "radius"}},
	},
	Tolerance: answer.Tolerance{Inch: 0.0001, MM: 0.0025},
	Sources:   []string{"geometry", "insert-makers-infeed", "dial-marking"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("dial-reads", shared.DialReads(d))
		times := 1.0 // how much more the dial shows than the depth, 0.004 to 0.012 in
		if v.Word("dial-reads") == "diameter" {
			times = 2
		}
		infeed := calc.Inches(d.Steps(0.004*times, 0.012*times, 0.001))
		if d.System == machine.Metric {
			infeed = calc.Millimetres(d.Steps(0.10*times, 0.30*times, 0.02))
		}
		v.SetLength("infeed", infeed)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		h := v.Length("infeed")
		if v.Word("dial-reads") == "diameter" {
			h = w.Length("h", "i / 2")(h.Times(0.5), nil)
		} else {
			w.Length("h", "i")(h, nil)
		}
		w.Angle("a", "")(flankAngle, nil)
		problem.Step2(w, "b", calc.ShiftForDepth, h, flankAngle)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "sin", Work: shiftOf(func(h calc.Length) calc.Length { return h.Times(flankAngle.Sin()) })},
		// One number, two causes: divided by the tangent, or the whole 60 degrees taken.
		{Name: "cot", SameResultAs: "cot", Work: shiftOf(func(h calc.Length) calc.Length { return h.Times(1 / flankAngle.Tan()) })},
		{Name: "depth", Work: shiftOf(func(h calc.Length) calc.Length { return h })},
		{Name: "radians", Work: shiftOf(func(h calc.Length) calc.Length { return h.Times(math.Abs(math.Tan(flankAngle.Degrees()))) })},
		{Name: "along-flank", Work: func(v problem.Values) answer.Response {
			if v.Word("dial-reads") == "diameter" {
				return answer.NoResponse // at 30 degrees that is the error of not halving the dial
			}
			return answer.LengthResponse(depthFed(v).Times(1 / flankAngle.Cos()))
		}},
		{Name: "not-halved", Work: func(v problem.Values) answer.Response {
			if v.Word("dial-reads") == "radius" {
				return answer.NoResponse
			}
			return answer.LengthResponse(depthFed(v).Times(2 * flankAngle.Tan()))
		}},
		{Name: "halved", Work: func(v problem.Values) answer.Response {
			if v.Word("dial-reads") == "diameter" {
				return answer.NoResponse
			}
			return answer.LengthResponse(depthFed(v).Times(flankAngle.Tan() / 2))
		}},
	},
})

// depthFed is how far straight in the cross slide went.
func depthFed(v problem.Values) calc.Length {
	if v.Word("dial-reads") == "diameter" {
		return v.Length("infeed").Times(0.5)
	}
	return v.Length("infeed")
}

// shiftOf is the error of working out another shift from the depth.
func shiftOf(of func(h calc.Length) calc.Length) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response { return answer.LengthResponse(of(depthFed(v))) }
}
