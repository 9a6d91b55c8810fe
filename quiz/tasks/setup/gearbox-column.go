package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// chartLine is a figure that a gearbox chart shows three times: as threads per
// inch, as a pitch and as a feed.
type chartLine struct {
	tpi, pitch   float64
	inch, metric string // threads that want it
}

var chartLines = []chartLine{
	{8, 0.8, "1-8 UNC-2A", "M5x0.8-6g"},
	{10, 1, "3/4-10 UNC-2A", "M10x1-6g"},
	{20, 2, "1/2-20 UNF-2A", "M16x2-6g"},
}

var _ = shared.Register(problem.Task{
	Name: "gearbox-column", Stage: problem.SetUp, Kind: answer.Choice,
	Inputs: []problem.Input{
		{Name: "need", Symbol: "need", Type: problem.InputWord, Words: []string{"tpi", "pitch", "feed", "inch-callout", "metric-callout"}},
		{Name: "tpi", Symbol: "n", Type: problem.InputTPI, Low: 2, High: 80, Extra: true},
		{Name: "pitch-mm", Symbol: "Pmm", Type: problem.InputPlain, Low: 0.2, High: 12, Extra: true},
		{Name: "feed", Symbol: "F", Type: problem.InputLength, Low: 0.0005, High: 0.05, Extra: true},
		{Name: "thread", Symbol: "thread", Type: problem.InputThread, Extra: true},
	},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		need := problem.Pick(d, "tpi", "pitch", "feed")
		line := problem.Pick(d, chartLines...)
		v.Set("tpi", line.tpi)
		v.Set("pitch-mm", line.pitch)
		v.SetLength("feed", calc.Inches(line.tpi/1000))
		if d.System == machine.Metric {
			v.SetLength("feed", calc.Millimetres(line.tpi/100))
		}
		if d.Level != problem.NumbersGiven && need != "feed" { // the number must be found in a callout
			text := line.inch
			if need == "pitch" {
				text = line.metric
			}
			t, err := calc.ParseDesignation(text)
			if err != nil {
				return problem.Values{}
			}
			v.SetThread("thread", t)
			need = map[string]string{"tpi": "inch-callout", "pitch": "metric-callout"}[need]
		}
		v.SetWord("need", need)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: shared.Decide("need", map[string]string{
		"tpi": "tpi-col", "inch-callout": "tpi-col", "pitch": "metric-col", "metric-callout": "metric-col", "feed": "feed-on",
	}),
	Errors: []problem.CommonError{
		{Name: "feed-col"},
		{Name: "metric-col", Work: shared.OptionUnlessIn("need", "metric-col", "pitch", "metric-callout")},
		{Name: "feed-rod"},
		{Name: "tpi-col", Work: shared.OptionUnlessIn("need", "tpi-col", "tpi", "inch-callout")},
		{Name: "feed-on", Work: shared.OptionUnlessIn("need", "feed-on", "feed")},
	},
})
