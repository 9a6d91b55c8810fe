package blank

import (
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "relief-groove-width", Stage: problem.Blank, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: shared.Inputs(problem.ThreadInputs,
		problem.Input{Name: "speed", Symbol: "v", Type: problem.InputCount, Low: 1, High: 1000},
		problem.Input{Name: "seconds", Symbol: "y", Type: problem.InputPlain, Low: 0.05, High: 60}),
	Scrap:     answer.ScrapLow,
	Tolerance: answer.Tolerance{Inch: 0.002, MM: 0.05, Safe: answer.Above, Reach: 0.1},
	Sources:   []string{"arithmetic", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		d.Tell(&v, t, calc.Outside)
		speed := slowSpeed(d)
		seconds := d.Steps(0.5, 1.5, 0.1)
		width, err := calc.RoomToStop.Of(calc.SpindleSpeed(speed), t.Pitch, seconds)
		if err != nil || shared.TooFast(t.Pitch, speed) || calc.Within(width.Over(t.Pitch), 1, 0.25) {
			return problem.Values{} // one pitch would pass for right
		}
		if unit := d.System.Length(); unit.Fixed(width.Inches()) != unit.Fixed(printedPitch(d, t.Pitch).Times(width.Over(t.Pitch)).Inches()) {
			return problem.Values{} // half-way between two printed widths: a printed pitch would give the other
		}
		v.Set("speed", float64(speed))
		v.Set("seconds", seconds)
		v.Say("rpm", strconv.Itoa(speed)) // before the job, which would draw another
		if !d.JobWith(&v, calc.Outside, width.Times(3)) {
			return problem.Values{} // there must be a thread beside the groove
		}
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		pitch := w.Pitch()
		if v.Has("thread") && v.Thread("thread").Starts > 1 {
			t := v.Thread("thread")
			return problem.Working{}, &calc.InputError{What: "thread", Got: calc.Quoted(t.String()), Want: "a thread with one start, whose lead is its pitch"}
		}
		problem.Step3(w, "w", calc.RoomToStop, calc.SpindleSpeed(v.X("speed")), pitch, v.X("seconds"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-60", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(v.Pitch().Times(v.X("speed") * v.X("seconds")))
		}},
		{Name: "one-pitch", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Pitch()) }},
		{Name: "tpi", Work: func(v problem.Values) answer.Response {
			unit := v.System.Length()
			return answer.NumberResponse(turnsIn(v) / (v.Pitch().Inches() * unit.Factor) / unit.Factor)
		}},
		{Name: "half", Work: func(v problem.Values) answer.Response {
			width, err := calc.RoomToStop.Of(calc.SpindleSpeed(v.X("speed")), v.Pitch(), v.X("seconds"))
			return shared.Worked(width.Times(0.5), err)
		}},
	},
})

// printedPitch is the pitch as a step prints it, with two more places than an answer.
func printedPitch(d *problem.Draw, pitch calc.Length) calc.Length {
	unit := d.System.Length()
	return calc.Inches(calc.Round(pitch.Inches()*unit.Factor, unit.Places+2) / unit.Factor)
}

// slowSpeed draws one of the slow speeds of the learner's lathe.
func slowSpeed(d *problem.Draw) int {
	speeds := d.Lathe.Speeds
	if len(speeds) == 0 {
		speeds = machine.DefaultLathe(d.System).Speeds
	}
	return speeds[d.IntN(min(3, len(speeds)))]
}

// turnsIn is how often the spindle turns in the time that stopping takes.
func turnsIn(v problem.Values) float64 { return v.X("speed") / 60 * v.X("seconds") }
