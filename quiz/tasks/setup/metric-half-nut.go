package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "metric-half-nut", Stage: problem.SetUp, Kind: answer.Choice, SafetyCritical: true,
	Inputs: []problem.Input{
		{Name: "drive", Symbol: "drive", Type: problem.InputWord, Words: []string{"metric-on-inch", "inch-on-metric", "inch-on-inch", "metric-on-metric"}},
		{Name: "thread", Symbol: "thread", Type: problem.InputThread, Extra: true},
		{Name: "screw", Symbol: "N", Type: problem.InputPlain, Low: 1, High: 20, Extra: true},
	},
	Sources: []string{"jones-1914", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		onMetric := d.IntN(3) == 0
		lathe := machine.InchLathe
		if onMetric {
			lathe = machine.MetricLathe
		}
		same := d.IntN(2) == 0
		if _, ok := d.Lathe.ThreadDial(); d.Level == problem.OnTheJob && ok && len(clearCases(d.Lathe, same)) > 0 {
			lathe = d.Lathe
		}
		t := problem.Pick(d, clearCases(lathe, same)...)
		v.SetWord("drive", unitName(t.Metric)+"-on-"+unitName(lathe.Metric))
		v.SetThread("thread", t)
		v.Set("screw", lathe.LeadScrew)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		switch v.Word("drive") {
		case "inch-on-inch", "metric-on-metric":
			return v.Working().Choice("by-line")
		}
		return v.Working().Choice("keep-closed")
	},
	Errors: []problem.CommonError{
		{Name: "dial", Work: shared.OptionUnlessIn("drive", "dial", "inch-on-inch", "metric-on-metric")},
		{Name: "line-1", Work: shared.OptionUnlessIn("drive", "line-1", "inch-on-inch", "metric-on-metric")},
		{Name: "nearest"},
		{Name: "tool-in", Work: shared.OptionUnlessIn("drive", "tool-in", "inch-on-inch", "metric-on-metric")},
		{Name: "anywhere", Work: shared.OptionUnlessIn("drive", "anywhere", "metric-on-inch", "inch-on-metric")},
		{Name: "drag-back", Work: shared.OptionUnlessIn("drive", "drag-back", "metric-on-inch", "inch-on-metric")},
	},
})

func unitName(metric bool) string {
	if metric {
		return "metric"
	}
	return "inch"
}

// clearCases are the threads for which the rule of thumb about units holds on this
// lathe: some line of the dial fits a thread of its own units, though not every
// moment does, and none fits a thread of the other.
func clearCases(lathe machine.Lathe, sameUnits bool) []calc.Designation {
	dial, _ := lathe.ThreadDial()
	var all []calc.Designation
	for _, text := range []string{
		"3/8-16 UNC-2A", "1/2-13 UNC-2A", "9/16-12 UNC-2A", "5/8-11 UNC-2A", "3/4-10 UNC-2A", "7/8-9 UNC-2A", "1-8 UNC-2A",
		"M10x1.25-6g", "M10x1.5-6g", "M12x1.75-6g", "M16x2-6g", "M20x2.5-6g", "M24x3-6g", "M36x4-6g",
	} {
		t, err := calc.ParseDesignation(text)
		if err != nil || (t.Metric == lathe.Metric) != sameUnits {
			continue
		}
		safe, err := dial.SafeMarks(t.Lead())
		always, err2 := dial.AnyMoment(t.Lead())
		if err == nil && err2 == nil && !always && (len(safe) > 0) == sameUnits {
			all = append(all, t)
		}
	}
	return all
}
