package tasks

import (
	"fmt"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "minor-diameter", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    inputs(problem.ThreadInputs, nominalInput),
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Scrap:     answer.ScrapLow,
	Sources:   []string{"navy", "b1-1"},
	Draw:      func(d *problem.Draw) problem.Values { return drawSized(d, calc.Outside) },
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		minorSteps(w, v, "d1")
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "one-side", Work: lessPitches(calc.UnifiedExternal.Factor())},
		{Name: "d-minus-p", Work: lessPitches(1)},
		{Name: "sharp-v", Work: lessPitches(2 * calc.SharpV.Factor())},
		{Name: "four", Work: lessPitches(4 * calc.UnifiedExternal.Factor())},
		{Name: "american-national", Convention: true, Work: lessPitches(2 * calc.AmericanNational.Factor())},
		{Name: "unr", Convention: true, Work: func(v problem.Values) answer.Response {
			nominal, _ := nominalTold(v) // the key has been worked out: no error here
			d, err := calc.UNRMinor(nominal, v.Pitch())
			if err != nil {
				return answer.NoResponse
			}
			return answer.LengthResponse(d)
		}},
	},
})

// nominalInput is the nominal diameter of a thread that is told by its pitch. It is
// Extra because a callout names it already.
var nominalInput = problem.Input{Name: "nominal", Symbol: "D", Type: problem.InputLength, Low: 0.06, High: 12, Extra: true}

// onlyWithoutCallout returns an error where an input that a callout tells is
// missing without one, or stands beside one.
func onlyWithoutCallout(v problem.Values, in problem.Input) error {
	switch {
	case v.Has("thread") && v.Has(in.Name):
		return fmt.Errorf("--%s: the thread has already told it; leave it out", in.Name)
	case !v.Has("thread") && !v.Has(in.Name):
		return fmt.Errorf("--%s is missing: give %s", in.Name, in.Wants(v.System))
	}
	return nil
}

// nominalTold is the nominal diameter, whichever way the thread was told.
func nominalTold(v problem.Values) (calc.Length, error) {
	if err := onlyWithoutCallout(v, nominalInput); err != nil {
		return 0, err
	}
	if v.Has("thread") {
		return v.Thread("thread").Nominal, nil
	}
	return v.Length("nominal"), nil
}

// nominalStep adds the step from a callout to the nominal diameter, where there is
// one.
func nominalStep(w *problem.Working, v problem.Values) calc.Length {
	d, err := nominalTold(v)
	if v.Has("thread") || err != nil {
		return w.Length("D", "")(d, err)
	}
	return d
}

// firstThread draws a thread as a beginner may cut it: 6 to 20 threads per inch, or
// 1 to 4 mm of pitch.
func firstThread(d *problem.Draw) calc.Designation {
	if d.System == machine.Metric {
		return d.Thread(calc.Millimetres(1), calc.Millimetres(4))
	}
	return d.Thread(calc.Inch/20, calc.Inch/6)
}

// tellSized tells a thread with its nominal diameter: by numbers at level 1, by a
// callout above it.
func tellSized(d *problem.Draw, v *problem.Values, t calc.Designation, side calc.Side) {
	if d.Level != problem.NumbersGiven {
		d.TellAs(v, t, side, "callout")
		return
	}
	v.SetLength("nominal", t.Nominal)
	d.Tell(v, t, side)
}

// drawSized draws a thread with its nominal diameter and nothing else.
func drawSized(d *problem.Draw, side calc.Side) problem.Values {
	v := d.Values()
	tellSized(d, &v, firstThread(d), side)
	d.Job(&v, side)
	return v
}

// minorSteps adds the steps to the root diameter by the factor 0.613.
func minorSteps(w *problem.Working, v problem.Values, symbol string) calc.Length {
	nominal, pitch := nominalStep(w, v), w.Pitch()
	w.Length("h", "0.613435 x P")(calc.RadialDepthOfForm(pitch, calc.UnifiedExternal))
	d, err := calc.ExternalMinor(nominal, pitch)
	if side := only(v, calc.Outside); side != nil {
		err = side
	}
	return w.Length(symbol, "D - 2 x h")(d, err)
}

// lessPitches is the slip of taking another share of the pitch off the nominal
// diameter.
func lessPitches(k float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		nominal, err := nominalTold(v)
		if err != nil {
			return answer.NoResponse
		}
		return answer.LengthResponse(nominal - v.Pitch().Times(k))
	}
}
