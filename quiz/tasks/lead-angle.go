package tasks

import (
	"fmt"
	"math"

	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "lead-angle", Stage: quiz.Shape,
	Inputs:  inputs(quiz.ThreadInputs, startsInput, nominalInput, pitchDiameterInput),
	Tol:     quiz.Tolerance{Else: 0.1},
	Sources: []string{"geometry", "handbook"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		t := firstThread(d)
		t.Starts = quiz.Pick(d, 1, 1, 2, 3)
		if d.Level != quiz.NumbersGiven {
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
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		leadAngleSteps(w, v)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "no-pi", Work: func(v quiz.Values) quiz.Reply {
			lead, e := leadAndDiameter(v)
			return quiz.X(calc.AngleOfSlope(lead, e).Degrees())
		}},
		{Name: "invert", Work: func(v quiz.Values) quiz.Reply {
			lead, e := leadAndDiameter(v)
			return quiz.X(calc.AngleOfSlope(e.Times(math.Pi), lead).Degrees())
		}},
		{Name: "pitch", Work: func(v quiz.Values) quiz.Reply {
			if starts(v) == 1 {
				return quiz.NoAnswer
			}
			_, e := leadAndDiameter(v)
			return quiz.X(calc.AngleOfSlope(v.Pitch(), e.Times(math.Pi)).Degrees())
		}},
		{Name: "radians", Work: func(v quiz.Values) quiz.Reply {
			lead, e := leadAndDiameter(v)
			return quiz.X(calc.AngleOfSlope(lead, e.Times(math.Pi)).Degrees() * math.Pi / 180)
		}},
	},
})

// startsInput is the number of starts of a thread that is told by its pitch; a
// callout names it already.
var startsInput = quiz.Input{Name: "starts", Symbol: "z", Is: quiz.ACount, Low: 1, High: 12, Extra: true}

// pitchDiameterInput is a pitch diameter that is known already.
var pitchDiameterInput = quiz.Input{Name: "pitch-diameter", Symbol: "E", Is: quiz.ALength, Low: 0.04, High: 12, Extra: true}

// starts is the number of starts, whichever way the thread was told.
func starts(v quiz.Values) float64 {
	if v.Has("thread") {
		return float64(v.Thread("thread").Starts)
	}
	return v.X("starts")
}

// leadStep adds the step from the pitch to the lead, and before it the starts of a
// callout.
func leadStep(w *quiz.Working, v quiz.Values, pitch calc.Length) calc.Length {
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
func pitchDiameterStep(w *quiz.Working, v quiz.Values, pitch calc.Length) calc.Length {
	if v.Has("pitch-diameter") {
		if v.Has("nominal") {
			return w.Length("E", "")(0, fmt.Errorf("--nominal: the pitch diameter is told already; leave one of them out"))
		}
		return v.Length("pitch-diameter")
	}
	return w.Length("E", "D - 0.649519 x P")(calc.BasicPitchDiameter(nominalStep(w, v), pitch))
}

// leadAngleSteps adds the steps to the lead angle at the pitch diameter.
func leadAngleSteps(w *quiz.Working, v quiz.Values) calc.Angle {
	pitch := w.Pitch()
	lead := leadStep(w, v, pitch)
	e := pitchDiameterStep(w, v, pitch)
	return w.Angle("A", "atan(l / (3.14159265 x E))")(calc.LeadAngle(lead, e))
}

// leadAndDiameter are the lead and the pitch diameter for slips that start from
// them. The key has been worked out: no error here.
func leadAndDiameter(v quiz.Values) (lead, e calc.Length) {
	lead = v.Pitch().Times(starts(v))
	if v.Has("pitch-diameter") {
		return lead, v.Length("pitch-diameter")
	}
	nominal, _ := nominalTold(v)
	e, _ = calc.BasicPitchDiameter(nominal, v.Pitch())
	return lead, e
}
