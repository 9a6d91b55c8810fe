package tasks

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "time-to-shoulder", Stage: problem.SetUp, Kind: answer.Quantity, SafetyCritical: true,
	Inputs:    inputs(problem.ThreadInputs, rpmInput, length("gap", "g", 0.01, 10)),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Other: 0.03},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.Tell(&v, d.Thread(calc.Inch/20, calc.Inch/6), calc.Outside)
		rpm := drawSpeed(d)
		v.Set("rpm", float64(rpm))
		v.SetLength("gap", drawGap(d))
		if t := timeLeft(v); t < 0.8 || t > 5 || halfway(t, secondUnit) || tooFast(v.Pitch(), rpm) {
			return problem.Values{}
		}
		jobAt(d, &v, calc.Outside, rpm)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := oneStart(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		pitch := w.Pitch()
		travel, err := calc.CarriageTravel(speedOf(v), pitch, 1)
		w.Number("j", "v / 60 x P", aSecond(v.System))(travel.Inches(), err)
		w.Number("y", "g / j", secondUnit)(calc.TimeToTravel(v.Length("gap"), speedOf(v), pitch))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		// One size of number, two causes: where the threads are coarse this and tpi
		// can't be told apart.
		{Name: "no-60", SameResultAs: "no-60", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(timeLeft(v) / 60) }},
		{Name: "tpi", Work: func(v problem.Values) answer.Response {
			return apartFrom(timeLeft(v)/60, v.Length("gap").Over(upsideDown(v).Times(v.X("rpm")/60)), 0.025)
		}},
		{Name: "gap-only", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(v.Length("gap").Over(v.Pitch()))
		}},
		{Name: "speed-over-gap", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(1 / timeLeft(v)) }},
	},
})

var secondUnit = machine.Unit{Name: "s", Factor: 1, Places: 2}

// drawGap draws the way from the end of a thread to a shoulder.
func drawGap(d *problem.Draw) calc.Length {
	if d.System == machine.Metric {
		return calc.Millimetres(d.Steps(3, 10, 0.5))
	}
	return calc.Inches(d.Steps(0.125, 0.375, 0.0625))
}

// timeLeft is the time for the gap, and 0 where there is none.
func timeLeft(v problem.Values) float64 {
	t, _ := calc.TimeToTravel(v.Length("gap"), speedOf(v), v.Pitch()) // Work reports the error
	return t
}

// apartFrom is the reply of a slip unless its number is too near another slip's to
// tell which was made; the words of the other then name both causes.
func apartFrom(other, x, apart float64) answer.Response {
	if math.Abs(x-other) < apart {
		return answer.NoResponse
	}
	return answer.NumberResponse(x)
}

// oneStart refuses a designation of several starts where the pitch stands for the
// lead.
func oneStart(v problem.Values) error {
	if v.Has("thread") && v.Thread("thread").Starts > 1 {
		return &calc.InputError{What: "thread", Got: calc.Quoted(v.Thread("thread").String()), Want: "a thread with one start"}
	}
	return nil
}
