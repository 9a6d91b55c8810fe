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
	Sources:   []string{"arithmetic", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		if d.Level == problem.NumbersGiven {
			v.SetLength("bore", d.Length(700, 1600, 1800, 4000))
		} else {
			d.TellAs(&v, d.Thread(calc.Inch/16, calc.Inch/7), calc.Inside, "callout")
		}
		tool, withdraw, bar := d.Length(90, 160, 220, 400), d.Length(70, 120, 180, 300), problem.Pick(d, barsOf(d.System)...)
		bore := boreOf(v)
		if room := bore - bar - tool - withdraw; room < 0.02 || bore < 0.65 || bar < bore.Times(0.35) || bar > bore.Times(0.62) {
			return problem.Values{}
		}
		if tool < deepest(v)+clear || withdraw < deepest(v)+clear/2 { // neither bar nor tip would clear the crests
			return problem.Values{}
		}
		v.SetLength("tool", tool)
		v.SetLength("withdraw", withdraw)
		v.SetLength("bar", bar)
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

// clear is how much further than the thread is deep the tool stands out at least.
const clear = calc.Inch / 50

// deepest is how deep the thread can get: from its basic bore with a sharp tool. It is
// nothing where no thread is told; the prompt then says that the tool stands out further.
func deepest(v problem.Values) calc.Length {
	if !v.Has("thread") {
		return 0
	}
	depth, _ := calc.DepthFromBore.Of(v.Thread("thread").Pitch, 0) // Work reports the error
	return depth
}

// barsOf are the boring bars that are sold, by the diameter of their shank.
func barsOf(s machine.System) []calc.Length {
	var bars []calc.Length
	for _, size := range map[machine.System][]float64{
		machine.Imperial: {0.25, 0.3125, 0.375, 0.5, 0.625, 0.75, 1}, machine.Metric: {6, 8, 10, 12, 16, 20, 25},
	}[s] {
		if s == machine.Metric {
			bars = append(bars, calc.Millimetres(size))
			continue
		}
		bars = append(bars, calc.Inches(size))
	}
	return bars
}

// boreOf is the bore that was told, or the basic one of the thread.
func boreOf(v problem.Values) calc.Length {
	if !v.Has("thread") {
		return v.Length("bore")
	}
	t := v.Thread("thread")
	bore, _ := calc.BasicBore.Of(t.Nominal, t.Pitch) // Work reports the error
	return bore
}
