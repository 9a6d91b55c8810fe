package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "gear-ratio-metric-thread", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "pitch-mm", Symbol: "P", Type: problem.InputPlain, Low: 0.3, High: 10, Group: "thread"},
		{Name: "thread", Symbol: "thread", Type: problem.InputThread, Group: "thread"},
		screwInput,
	},
	Tolerance: answer.Tolerance{Other: 0.003},
	Systems:   []machine.System{machine.Imperial},
	Sources:   []string{"jones-1914"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		metric := *d // draws from the metric threads, with the same source
		metric.System = machine.Metric
		t := shared.FirstThread(&metric)
		t.Class = "6g"
		if d.Level == problem.NumbersGiven {
			v.Set("pitch-mm", calc.Round(t.Pitch.Millimetres(), 4))
		} else {
			v.SetThread("thread", t)
		}
		v.Set("lead-screw", drawScrew(d))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OneStart(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		pitch := millimetrePitch(v)
		if v.Has("thread") {
			if t := v.Thread("thread"); !t.Metric {
				return problem.Working{}, &calc.InputError{What: "thread", Got: calc.Quoted(t.String()), Want: "a metric thread such as M12x1.75-6g"}
			}
			w.Number("P", "", machine.MMUnit)(pitch.Inches(), nil)
		}
		problem.Step2(w, "r", calc.GearsMetric, pitch, screwLead(v))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "invert", Work: func(v problem.Values) answer.Response {
			ratio, err := calc.GearsMetric.Of(millimetrePitch(v), screwLead(v))
			return shared.Worked(1/ratio, err)
		}},
		{Name: "two54", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(pitchTimesScrew(v) / 2.54) }},
		{Name: "no-127", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(millimetrePitch(v).Millimetres() / v.X("lead-screw"))
		}},
		{Name: "gear120", Work: func(v problem.Values) answer.Response {
			ratio, err := calc.GearsMetric.Of(millimetrePitch(v), screwLead(v))
			return shared.Worked(ratio*127/120, err) // 120 teeth in place of 127
		}},
	},
})

func millimetrePitch(v problem.Values) calc.Length {
	if v.Has("thread") {
		return v.Thread("thread").Pitch
	}
	return calc.Millimetres(v.X("pitch-mm"))
}

// pitchTimesScrew is the pitch in millimetres times the threads per inch of the
// lead screw.
func pitchTimesScrew(v problem.Values) float64 {
	return millimetrePitch(v).Millimetres() * v.X("lead-screw")
}
