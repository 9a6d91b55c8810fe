package tasks

import (
	"fmt"
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "lead-angle", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    inputs(problem.ThreadInputs, startsInput, nominalInput, pitchDiameterInput),
	Tolerance: answer.Tolerance{Other: 0.1},
	Sources:   []string{"geometry", "handbook"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := firstThread(d)
		t.Starts = problem.Pick(d, 1, 1, 2, 3)
		if d.Level != problem.NumbersGiven {
			d.TellAs(&v, t, calc.Outside, "callout")
		} else {
			d.Tell(&v, t, calc.Outside)
			v.Set("starts", float64(t.Starts))
			u := d.System.Length()
			e, _ := calc.BasicPitchDiameter(t.Nominal, t.Pitch) // a standard thread
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
			if starts(v) == 1 {
				return answer.NoResponse
			}
			_, e := leadAndDiameter(v)
			return answer.NumberResponse(calc.AngleOfSlope(v.Pitch(), e.Times(math.Pi)).Degrees())
		}},
		{Name: "radians", Work: func(v problem.Values) answer.Response {
			lead, e := leadAndDiameter(v)
			return answer.NumberResponse(calc.AngleOfSlope(lead, e.Times(math.Pi)).Degrees() * math.Pi / 180)
		}},
	},
})

// startsInput is the number of starts of a thread that is told by its pitch; a
// callout names it already.
var startsInput = problem.Input{Name: "starts", Symbol: "z", Type: problem.InputCount, Low: 1, High: 12, Extra: true}

// pitchDiameterInput is a pitch diameter that is known already.
var pitchDiameterInput = problem.Input{Name: "pitch-diameter", Symbol: "E", Type: problem.InputLength, Low: 0.04, High: 12, Extra: true}

// starts is the number of starts, whichever way the thread was told.
func starts(v problem.Values) float64 {
	if v.Has("thread") {
		return float64(v.Thread("thread").Starts)
	}
	return v.X("starts")
}

// leadStep adds the step from the pitch to the lead, and before it the starts of a
// callout.
func leadStep(w *problem.Working, v problem.Values, pitch calc.Length) calc.Length {
	if err := onlyWithoutCallout(v, startsInput); err != nil {
		return w.Length("l", "z x P")(0, err)
	}
	if v.Has("thread") {
		w.Number("z", "", machine.CountUnit)(starts(v), nil)
	}
	return w.Length("l", "z x P")(calc.Lead(pitch, int(starts(v))))
}

// pitchDiameterStep adds the steps to the pitch diameter: none where it is given,
// else to the basic one.
func pitchDiameterStep(w *problem.Working, v problem.Values, pitch calc.Length) calc.Length {
	if v.Has("pitch-diameter") {
		if v.Has("nominal") {
			return w.Length("E", "")(0, fmt.Errorf("--nominal: the pitch diameter is told already; leave one of them out"))
		}
		return v.Length("pitch-diameter")
	}
	return w.Length("E", "D - 0.649519 x P")(calc.BasicPitchDiameter(nominalStep(w, v), pitch))
}

// leadAngleSteps adds the steps to the lead angle at the pitch diameter.
func leadAngleSteps(w *problem.Working, v problem.Values) calc.Angle {
	pitch := w.Pitch()
	lead := leadStep(w, v, pitch)
	e := pitchDiameterStep(w, v, pitch)
	return w.Angle("A", "atan(l / (3.14159265 x E))")(calc.LeadAngle(lead, e))
}

// leadAndDiameter are the lead and the pitch diameter for slips that start from
// them. The key has been worked out: no error here.
func leadAndDiameter(v problem.Values) (lead, e calc.Length) {
	lead = v.Pitch().Times(starts(v))
	if v.Has("pitch-diameter") {
		return lead, v.Length("pitch-diameter")
	}
	nominal, _ := nominalTold(v)
	e, _ = calc.BasicPitchDiameter(nominal, v.Pitch())
	return lead, e
}
