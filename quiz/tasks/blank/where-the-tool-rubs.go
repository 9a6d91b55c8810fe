package blank

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "where-the-tool-rubs", Stage: problem.Blank, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "polished", Symbol: "polished", Type: problem.InputWord,
		Words: []string{"leading", "trailing", "front", "too-high", "in-bore"}}},
	Sources: []string{"relief-angles", "navy-tools", "geometry", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		at := problem.Pick(d, "leading", "trailing", "front", "too-high", "in-bore")
		v.SetWord("polished", at)
		side := calc.Outside
		if at == "in-bore" {
			side = calc.Inside
		}
		d.Job(&v, side)
		return v
	},
	Work: shared.Decide("polished", map[string]string{
		"leading": "more-leading", "trailing": "more-trailing", "front": "more-front", "too-high": "lower-tool", "in-bore": "lower-front",
	}),
	Errors: []problem.CommonError{
		{Name: "more-leading", Work: shared.OptionUnlessIn("polished", "more-leading", "leading")},
		{Name: "more-trailing", Work: shared.OptionUnlessIn("polished", "more-trailing", "trailing", "in-bore")},
		{Name: "more-front", Work: shared.OptionUnlessIn("polished", "more-front", "front", "in-bore")},
		{Name: "lower-tool", Work: shared.OptionUnlessIn("polished", "lower-tool", "too-high", "leading")},
		{Name: "lower-front", Work: shared.OptionUnlessIn("polished", "lower-front", "in-bore", "front")},
		{Name: "rake"},
		{Name: "harder", Work: shared.OptionUnlessIn("polished", "harder", "in-bore")},
		{Name: "raise-bar", Work: shared.OptionUnlessIn("polished", "raise-bar", "leading", "trailing", "front", "too-high")},
	},
})
