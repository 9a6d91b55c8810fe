package shape

import (
	"fmt"
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "lead-angle", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.StartsInput, shared.NominalInput, pitchDiameterInput),
	Tolerance: answer.Tolerance{Other: 0.06},
	Sources:   []string{"geometry", "handbook"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		t.Starts = problem.Pick(d, 1, 1, 2, 3)
		if d.Level != problem.NumbersGiven {
			d.TellAs(&v, t, calc.Outside, "callout")
		} else {
			d.Tell(&v, t, calc.Outside)
			v.Set("starts", float64(t.Starts))
			u := d.System.Length()
			e, _ := calc.PitchDiameter.Of(t.Nominal, t.Pitch) // a standard thread
			v.SetLength("pitch-diameter", calc.Inches(calc.Round(e.Inches()*u.Factor, u.Places)/u.Factor))
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		leadAngleSteps(w, v)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-pi", Work: func(v problem.Values) answer.Response {
			lead, e := leadAndDiameter(v)
			return answer.NumberResponse(calc.AngleOfSlope(lead, e).Degrees())
		}},
		{Name: "invert", Work: func(v problem.Values) answer.Response {
			lead, e := leadAndDiameter(v)
			return answer.NumberResponse(calc.AngleOfSlope(e.Times(math.Pi), lead).Degrees())
		}},
		{Name: "pitch", Work: func(v problem.Values) answer.Response {
			if shared.StartsOf(v) == 1 {
				return answer.NoResponse
			}
			_, e := leadAndDiameter(v)
			return shared.Worked(calc.ThreadSlope.Of(v.Pitch(), e))
		}},
		{Name: "nominal", Work: func(v problem.Values) answer.Response {
			nominal, err := shared.NominalTold(v)
			if err != nil {
				return answer.NoResponse // only the pitch diameter is told
			}
			lead, _ := leadAndDiameter(v)
			return shared.Worked(calc.ThreadSlope.Of(lead, nominal))
		}},
		{Name: "radians", Work: func(v problem.Values) answer.Response {
			a, err := calc.ThreadSlope.Of(leadAndDiameter(v))
			return shared.Worked(a.Degrees()*math.Pi/180, err)
		}},
	},
})

// pitchDiameterInput is a pitch diameter that is known already.
var pitchDiameterInput = problem.Input{Name: "pitch-diameter", Symbol: "E", Type: problem.InputLength, Low: 0.04, High: 12, Extra: true}

// pitchDiameterStep adds the steps to the pitch diameter: none where it is given,
// else to the basic one.
func pitchDiameterStep(w *problem.Working, v problem.Values, pitch calc.Length) calc.Length {
	if v.Has("pitch-diameter") {
		if v.Has("nominal") {
			w.Refuse(fmt.Errorf("--nominal: the pitch diameter is told already; leave one of them out"))
		}
		return v.Length("pitch-diameter")
	}
	return problem.Step2(w, "E", calc.PitchDiameter, shared.NominalStep(w, v), pitch)
}
