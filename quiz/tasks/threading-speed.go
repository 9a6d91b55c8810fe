package tasks

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "threading-speed", Stage: problem.SetUp, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: inputs(turnedSize,
		problem.Input{Name: "turning-speed", Symbol: "V", Type: problem.InputPlain, Low: 10, High: 1000}),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Relative: 0.05},
	Systems:   []machine.System{machine.Imperial},
	Sources:   []string{"tm-1-420", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		if !tellSize(d, &v, calc.Inches(d.Steps(0.375, 2, 0.0625)), calc.Inches(0.5), calc.Inches(1.75)) {
			return problem.Values{}
		}
		v.Set("turning-speed", d.Steps(60, 110, 5))
		if tooQuick(v) {
			return problem.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		return threadingSpeed(v, "12 x V / (3.14159265 x D)", calc.FeetPerMinute(v.X("turning-speed")))
	},
	Errors: []problem.CommonError{
		{Name: "no-quarter", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(12 * feetOverInches(v) / math.Pi)
		}},
		{Name: "no-pi", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(12 * feetOverInches(v) / 4) }},
		{Name: "no-12", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(feetOverInches(v) / math.Pi / 4)
		}},
		{Name: "radius", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(2 * 12 * feetOverInches(v) / math.Pi / 4)
		}},
	},
})

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

func feetOverInches(v problem.Values) float64 { return v.X("turning-speed") / sizeOf(v).Inches() }

// fastestFirstThread is the highest spindle speed that a problem leads to.
const fastestFirstThread = 150

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
