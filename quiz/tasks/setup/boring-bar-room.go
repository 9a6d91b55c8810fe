package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "boring-bar-room", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "bore", Symbol: "B", Type: problem.InputLength, Low: 0.1, High: 12, Group: "bore"},
		{Name: "thread", Symbol: "thread", Type: problem.InputThread, Group: "bore"},
		shared.LengthInput("bar", "b", 0.05, 6), shared.LengthInput("tool", "q", 0, 3), shared.LengthInput("withdraw", "w", 0, 1),
	},
	Tolerance: answer.Tolerance{Inch: 0.004, MM: 0.1},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		if d.Level == problem.NumbersGiven {
			v.SetLength("bore", d.Length(700, 1600, 1800, 4000))
		} else {
			d.TellAs(&v, d.Thread(calc.Inch/16, calc.Inch/7), calc.Inside, "callout")
		}
		v.SetLength("tool", d.Length(90, 160, 220, 400))
		v.SetLength("withdraw", d.Length(70, 120, 180, 300))
		step, low, high := calc.Inch/16, 0.40, 0.62
		if d.System == machine.Metric {
			step = calc.Millimetres(1)
		}
		bore := boreOf(v)
		v.SetLength("bar", step.Times(float64(d.Between(int(bore.Times(low).Over(step)), int(bore.Times(high).Over(step))))))
		if room := bore - v.Length("bar") - v.Length("tool") - v.Length("withdraw"); room < 0.02 || bore < 0.65 {
			return problem.Values{}
		}
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Inside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		bore := boreOf(v)
		if v.Has("thread") {
			pitch := w.Pitch()
			nominal := w.Length("D", "")(v.Thread("thread").Nominal, nil)
			bore = problem.Step2(w, "B", calc.BasicBore, nominal, pitch)
		}
		w.Length("e", "B - b - q - w")(bore-v.Length("bar")-v.Length("tool")-v.Length("withdraw"), nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-tool", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(boreOf(v) - v.Length("bar") - v.Length("withdraw"))
		}},
		{Name: "no-withdraw", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(boreOf(v) - v.Length("bar") - v.Length("tool"))
		}},
		{Name: "radius", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(boreOf(v).Times(0.5) - v.Length("bar") - v.Length("tool") - v.Length("withdraw"))
		}},
		{Name: "middle", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse((boreOf(v) - v.Length("bar")).Times(0.5) - v.Length("withdraw"))
		}},
	},
})

// boreOf is the bore that was told, or the basic one of the thread.
func boreOf(v problem.Values) calc.Length {
	if !v.Has("thread") {
		return v.Length("bore")
	}
	t := v.Thread("thread")
	bore, _ := calc.BasicBore.Of(t.Nominal, t.Pitch) // Work reports the error
	return bore
}
