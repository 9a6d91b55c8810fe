package tasks

import (
	"math"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "carriage-speed", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs: inputs(problem.ThreadInputs, rpmInput,
		problem.Input{Name: "starts", Symbol: "z", Type: problem.InputCount, Low: 1, High: 12}),
	Tolerance: answer.Tolerance{Relative: 0.02},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := d.Thread(calc.Inch/20, calc.Inch/8)
		t.Starts = problem.Pick(d, 1, 2, 2, 3)
		tellStarts(d, &v, t)
		rpm := drawSpeed(d)
		v.Set("rpm", float64(rpm))
		if halfway(leadOf(v).Inches()*v.X("rpm")/60, aSecond(d.System)) || tooFast(leadOf(v), rpm) {
			return problem.Values{}
		}
		jobAt(d, &v, calc.Outside, rpm)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := sameStarts(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		lead := w.Length("l", "z x P")(calc.Lead(w.Pitch(), v.Count("starts")))
		travel, err := calc.CarriageTravel(speedOf(v), lead, 1)
		w.Number("j", "v / 60 x l", aSecond(v.System))(travel.Inches(), err)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-60", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(leadOf(v).Times(v.X("rpm"))) }},
		{Name: "pitch", Work: func(v problem.Values) answer.Response {
			if v.Count("starts") == 1 {
				return answer.NoResponse
			}
			return answer.LengthResponse(v.Pitch().Times(v.X("rpm") / 60))
		}},
		{Name: "tpi-mult", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(upsideDown(v).Times(v.X("rpm") / 60))
		}},
		{Name: "invert", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(leadOf(v).Times(60 / v.X("rpm")))
		}},
	},
})

// rpmInput is the speed of the spindle.
var rpmInput = problem.Input{Name: "rpm", Symbol: "v", Type: problem.InputPlain, Low: 1, High: 5000}

func speedOf(v problem.Values) calc.SpindleSpeed { return calc.SpindleSpeed(v.X("rpm")) }

// drawSpeed draws a slow spindle speed, on the job one that the lathe has.
func drawSpeed(d *problem.Draw) int {
	speeds := d.Lathe.Speeds
	if len(speeds) == 0 {
		speeds = machine.DefaultLathe(d.System).Speeds
	}
	if d.Level == problem.OnTheJob {
		return speeds[d.IntN(min(3, len(speeds)))]
	}
	return 5 * d.Between(9, 28)
}

// fastestCarriage is as fast as a carriage may go for a first thread, in inches a
// second: a hand can follow it.
const fastestCarriage = 0.13

// tooFast reports whether a beginner could not follow the carriage.
func tooFast(lead calc.Length, rpm int) bool {
	return lead.Times(float64(rpm)/60) > fastestCarriage
}

// jobAt is a job whose spindle runs at the speed that the problem is about.
func jobAt(d *problem.Draw, v *problem.Values, side calc.Side, rpm int) {
	v.Say("rpm", strconv.Itoa(rpm))
	d.Job(v, side)
}

// aSecond is the unit of a carriage speed, which is held in inches a second.
func aSecond(s machine.System) machine.Unit {
	if s == machine.Metric {
		return machine.Unit{Name: "mm/s", Factor: calc.MillimetresPerInch, Places: 2}
	}
	return machine.Unit{Name: "in/s", Factor: 1, Places: 3}
}

// tellStarts tells a thread of several starts: its numbers at level 1, above it the
// drawing's callout, which names the starts too.
func tellStarts(d *problem.Draw, v *problem.Values, t calc.Designation) {
	v.Set("starts", float64(t.Starts))
	if d.Level == problem.NumbersGiven {
		d.Tell(v, t, calc.Outside)
		return
	}
	d.TellAs(v, t, calc.Outside, "callout")
}

// sameStarts refuses a callout that names other starts than the ones given.
func sameStarts(v problem.Values) error {
	if v.Has("thread") && v.Thread("thread").Starts != v.Count("starts") {
		return &calc.InputError{What: "starts", Got: strconv.Itoa(v.Count("starts")), Want: "the starts that the thread names, " + strconv.Itoa(v.Thread("thread").Starts)}
	}
	return nil
}

func leadOf(v problem.Values) calc.Length { return v.Pitch().Times(v.X("starts")) }

// upsideDown is the number of threads in an inch or a millimetre, taken for the
// length of one.
func upsideDown(v problem.Values) calc.Length {
	one := calc.Inch
	if v.System == machine.Metric {
		one = calc.Millimetres(1)
	}
	return one.Times(one.Over(v.Pitch()))
}

// halfway reports whether a number lies just between two printed ones. A pitch that
// goes on for ever (1/12) is printed rounded, and what follows from the printed one
// then lands on either side.
func halfway(held float64, u machine.Unit) bool {
	x := held * u.Factor * math.Pow10(u.Places)
	return calc.Within(x-math.Floor(x), 0.5, 1e-6)
}
