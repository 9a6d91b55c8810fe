package shared

import (
	"fmt"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// NominalInput is the nominal diameter of a thread that is told by its pitch. It is
// Extra because a callout names it already.
var NominalInput = problem.Input{Name: "nominal", Symbol: "D", Type: problem.InputLength, Low: 0.06, High: 12, Extra: true}

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

// NominalTold is the nominal diameter, whichever way the thread was told.
func NominalTold(v problem.Values) (calc.Length, error) {
	if err := onlyWithoutCallout(v, NominalInput); err != nil {
		return 0, err
	}
	if v.Has("thread") {
		return v.Thread("thread").Nominal, nil
	}
	return v.Length("nominal"), nil
}

// NominalStep adds the step from a callout to the nominal diameter, where there is
// one.
func NominalStep(w *problem.Working, v problem.Values) calc.Length {
	d, err := NominalTold(v)
	if v.Has("thread") || err != nil {
		return w.Length("D", "")(d, err)
	}
	return d
}

// FirstThread draws a thread as a beginner may meet it: 6 to 20 threads per inch, or
// 1 to 5 mm of pitch.
func FirstThread(d *problem.Draw) calc.Designation {
	if d.System == machine.Metric {
		return d.Thread(calc.Millimetres(1), calc.Millimetres(5))
	}
	return d.Thread(calc.Inch/20, calc.Inch/6)
}

// TellSized tells a thread with its nominal diameter: by numbers at level 1, by a
// callout above it.
func TellSized(d *problem.Draw, v *problem.Values, t calc.Designation, side calc.Side) {
	if d.Level != problem.NumbersGiven {
		d.TellAs(v, t, side, "callout")
		return
	}
	v.SetLength("nominal", t.Nominal)
	d.Tell(v, t, side)
}

// DrawSized draws a thread with its nominal diameter and nothing else.
func DrawSized(d *problem.Draw, side calc.Side) problem.Values {
	v := d.Values()
	TellSized(d, &v, FirstThread(d), side)
	d.Job(&v, side)
	return v
}
