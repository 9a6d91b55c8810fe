package reading

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "engagement-and-tolerance", Stage: problem.Reading, Kind: answer.Choice,
	Inputs: []problem.Input{
		{Name: "part", Symbol: "part", Type: problem.InputWord,
			Words: []string{"screw-short", "screw-normal", "screw-long", "nut-short", "nut-normal", "nut-long"}},
	},
	Systems: []machine.System{machine.Metric},
	Sources: []string{"iso-965", "handbook"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := d.Thread(calc.Millimetres(1), calc.Millimetres(4.5))
		short, long, ok := calc.NormalEngagement(t.Nominal, t.Pitch)
		if !ok {
			return problem.Values{}
		}
		part, length := problem.Pick(d, "screw", "nut"), problem.Pick(d, "short", "normal", "long")
		least, most := short.Millimetres(), long.Millimetres()
		engaged := map[string]float64{ // a whole number well inside its range
			"short":  d.Steps(max(1, calc.Round(least*0.4, 0)), calc.Round(least*0.75, 0), 1),
			"normal": d.Steps(calc.Round(least*1.4, 0), calc.Round(most*0.85, 0), 1),
			"long":   d.Steps(calc.Round(most*1.15, 0), calc.Round(most*1.6, 0), 1),
		}[length]
		side := calc.Outside
		if part == "nut" {
			side = calc.Inside
		}
		v.SetWord("part", part+"-"+length)
		v.Say("size", t.String())
		v.Say("over", calc.Shortest(least, 1)+" mm")
		v.Say("up-to", calc.Shortest(most, 1)+" mm")
		v.Say("engaged", calc.Shortest(engaged, 1)+" mm")
		d.Job(&v, side)
		return v
	},
	Work: shared.Decide("part", map[string]string{
		"screw-short": "5g6g", "screw-normal": "6g", "screw-long": "7g6g",
		"nut-short": "5H", "nut-normal": "6H", "nut-long": "7H",
	}),
	Errors: []problem.CommonError{
		{Name: "5g6g", Work: shared.OptionUnlessIn("part", "5g6g", "screw-short", "nut-normal", "nut-long")},
		{Name: "6g", Work: shared.OptionUnlessIn("part", "6g", "screw-normal", "nut-short", "nut-long")},
		{Name: "7g6g", Work: shared.OptionUnlessIn("part", "7g6g", "screw-long", "nut-short", "nut-normal")},
		{Name: "5H", Work: shared.OptionUnlessIn("part", "5H", "nut-short", "screw-normal", "screw-long")},
		{Name: "6H", Work: shared.OptionUnlessIn("part", "6H", "nut-normal", "screw-short", "screw-long")},
		{Name: "7H", Work: shared.OptionUnlessIn("part", "7H", "nut-long", "screw-short", "screw-normal")},
	},
})
