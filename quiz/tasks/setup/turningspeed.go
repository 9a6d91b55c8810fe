package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// rpmUnit is turns of the spindle in a minute.
var rpmUnit = machine.Unit{Name: "rpm", Factor: 1, Places: 0}

// turnedSize are the two ways of telling the diameter that a cutting speed is for:
// as a number, or as the thread on it.
var turnedSize = []problem.Input{
	{Name: "diameter", Symbol: "D", Type: problem.InputLength, Low: 0.1, High: 12, Group: "size"},
	{Name: "thread", Symbol: "thread", Type: problem.InputThread, Group: "size"},
}

// tellSize tells the diameter at level 1 and a thread of such a size above it. ok is
// false when the thread that was drawn lies outside the two sizes.
func tellSize(d *problem.Draw, v *problem.Values, diameter, low, high calc.Length) (ok bool) {
	if d.Level == problem.NumbersGiven {
		v.SetLength("diameter", diameter)
		return true
	}
	t := d.Thread(calc.Inch/20, calc.Inch/6)
	d.TellAs(v, t, calc.Outside, "callout")
	return t.Nominal >= low && t.Nominal <= high
}

func sizeOf(v problem.Values) calc.Length {
	if v.Has("thread") {
		return v.Thread("thread").Nominal
	}
	return v.Length("diameter")
}

// threadingSpeed is the working by the formula for turning, of which threading takes
// a quarter.
func threadingSpeed(v problem.Values, turning string, speed calc.SurfaceSpeed) (problem.Working, error) {
	w := v.Working()
	size := sizeOf(v)
	if v.Has("thread") {
		w.Length("D", "")(size, nil)
	}
	full, err := calc.SpindleSpeedFor(speed, size)
	w.Number("u", turning, rpmUnit)(full.RPM(), err)
	w.Number("v", "u / 4", rpmUnit)(full.RPM()*calc.ThreadingShare, nil)
	return w.Quantity()
}

// tooQuick reports whether the rule gives more than a first thread should turn at, or a
// limit that would be printed rounded up: a highest speed must not be.
func tooQuick(v problem.Values) bool {
	speed := calc.FeetPerMinute(v.X("turning-speed"))
	if v.System == machine.Metric {
		speed = calc.MetresPerMinute(v.X("turning-speed"))
	}
	full, err := calc.SpindleSpeedFor(speed, sizeOf(v))
	limit := full.RPM() * calc.ThreadingShare
	return err != nil || limit > fastestFirstThread || calc.Round(limit, 0) > limit+1e-9
}
