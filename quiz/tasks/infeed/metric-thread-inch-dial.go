package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "metric-thread-inch-dial", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: shared.Inputs([]problem.Input{
		{Name: "pitch-mm", Symbol: "P0", Type: problem.InputPlain, Low: 0.3, High: 12, Group: "metric-thread"},
		{Name: "thread", Symbol: "thread", Type: problem.InputThread, Group: "metric-thread"},
	}, shared.CompoundAngle...),
	Systems:   []machine.System{machine.Imperial}, // the dial is an inch dial
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.001},
	Sources:   []string{"navy", "geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		metric := *d // draws from the metric threads, with the same source
		metric.System = machine.Metric
		t := metric.Thread(calc.Millimetres(1.25), calc.Millimetres(5))
		if d.Level == problem.NumbersGiven {
			v.Set("pitch-mm", calc.Round(t.Pitch.Millimetres(), 3))
		} else {
			metric.TellAs(&v, t, calc.Outside, "callout")
		}
		shared.TellAngle(d, &v)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if v.Has("thread") && !v.Thread("thread").Metric {
			return problem.Working{}, &calc.InputError{What: "thread", Got: calc.Quoted(v.Thread("thread").String()), Want: "a metric thread such as M12x1.75-6g"}
		}
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		pitch := metricPitch(v)
		if v.Has("thread") {
			w.Number("P0", "", machine.MMUnit)(pitch.Inches(), nil)
		}
		w.Length("P", calc.InchesOfMM.Text)(calc.InchesOfMM.Of(pitch.Millimetres()), nil)
		h := problem.Step1(w, "h", calc.ExternalDepth, pitch)
		problem.Step2(w, "c", calc.TravelForDepth, h, shared.AngleStep(w, v))
		return w.Quantity()
	},
	Errors: append([]problem.CommonError{
		{Name: "no-convert", Work: func(v problem.Values) answer.Response { return metricTravel(v, calc.MillimetresPerInch) }},
		{Name: "no-angle", Work: func(v problem.Values) answer.Response { return metricTravel(v, shared.AngleOf(v).Cos()) }},
		{Name: "div-100", Work: func(v problem.Values) answer.Response { return metricTravel(v, calc.MillimetresPerInch/100) }},
		{Name: "use-tpi", Work: func(v problem.Values) answer.Response {
			perInch := calc.Inch.Over(metricPitch(v))
			return metricTravel(v, perInch*perInch) // the threads per inch in place of the pitch in inches
		}},
		{Name: "times-cos", Work: func(v problem.Values) answer.Response {
			return metricTravel(v, shared.AngleOf(v).Cos()*shared.AngleOf(v).Cos())
		}},
		{Name: "radians", Work: func(v problem.Values) answer.Response {
			return metricTravel(v, shared.AngleOf(v).Cos()/shared.InRadians(shared.AngleOf(v)))
		}},
	}, shared.OtherAngles(func(v problem.Values, a calc.Angle) (calc.Length, error) {
		h, err := calc.ExternalDepth.Of(metricPitch(v))
		return h.Times(1 / a.Cos()), err
	})...),
})

// metricPitch is the pitch of the metric thread, however it was told.
func metricPitch(v problem.Values) calc.Length {
	if v.Has("thread") {
		return v.Thread("thread").Pitch
	}
	return calc.Millimetres(v.X("pitch-mm"))
}

// metricTravel is the right compound travel, off by a factor: a common error.
func metricTravel(v problem.Values, factor float64) answer.Response {
	h, _ := calc.ExternalDepth.Of(metricPitch(v)) // the key has been worked out: no error here
	c, err := calc.TravelForDepth.Of(h, shared.AngleOf(v))
	return shared.Worked(c.Times(factor), err)
}
