package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "best-wire", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs:    problem.ThreadInputs,
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources:   []string{"ordnance", "navy"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, shared.FirstThread(d), calc.Outside)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		problem.Step1(w, "W", calc.BestWire, w.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "sharp-v", Work: shared.DepthOf(calc.SharpV)},
		{Name: "half", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Pitch().Times(0.5)) }},
		{Name: "depth", Work: shared.DepthOf(calc.UnifiedExternal)},
		{Name: "rounded-pitch", Work: shared.RoundedPitch(0.0005, func(_ problem.Values, pitch calc.Length) (calc.Length, error) {
			return calc.BestWire.Of(pitch)
		})},
		// A wire that can be used, but not the one asked for: no other convention.
		{Name: "max", Work: func(v problem.Values) answer.Response {
			wires, err := calc.WiresFor(v.Pitch())
			return shared.Worked(wires.Largest, err)
		}},
	},
})
