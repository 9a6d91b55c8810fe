package blank

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "start-of-a-thread", Stage: problem.Blank, Kind: answer.Choice,
	Inputs: []problem.Input{{Name: "start", Symbol: "start", Type: problem.InputWord,
		Words: []string{"full-wall", "bore-wall", "burr", "feather", "blunt-start", "wide-chamfer"}}},
	Sources: []string{"common-practice", "higbee", "shop-safety"},
	Draw:    shared.DrawSituation("start", calc.Outside, "full-wall", "bore-wall", "burr", "feather", "blunt-start", "wide-chamfer"),
	Work: shared.Decide("start", map[string]string{
		"full-wall": "chamfer-root", "bore-wall": "chamfer-major", "burr": "fine-file",
		"feather": "blend", "blunt-start": "cut-back", "wide-chamfer": "ask",
	}),
	Errors: []problem.CommonError{
		{Name: "chamfer-root", Work: shared.OptionUnlessIn("start", "chamfer-root", "full-wall", "wide-chamfer", "burr")},
		{Name: "chamfer-major", Work: shared.OptionUnlessIn("start", "chamfer-major", "bore-wall", "wide-chamfer", "burr", "feather")},
		{Name: "chamfer-nominal", Work: shared.OptionUnlessIn("start", "chamfer-nominal", "burr", "feather", "blunt-start", "wide-chamfer")},
		{Name: "cloth", Work: shared.OptionUnlessIn("start", "cloth", "full-wall", "bore-wall", "blunt-start", "wide-chamfer")},
		{Name: "running-file", Work: shared.OptionUnlessIn("start", "running-file", "full-wall", "bore-wall", "blunt-start", "wide-chamfer")},
		{Name: "force-nut", Work: shared.OptionUnlessIn("start", "force-nut", "blunt-start", "wide-chamfer", "full-wall", "bore-wall")},
		{Name: "fine-file", Work: shared.OptionUnlessIn("start", "fine-file", "burr", "feather", "wide-chamfer")},
		{Name: "cut-back", Work: shared.OptionUnlessIn("start", "cut-back", "blunt-start", "feather", "wide-chamfer")},
		{Name: "face-off", Work: shared.OptionUnlessIn("start", "face-off", "full-wall", "bore-wall", "burr", "feather")},
		{Name: "longer", Work: shared.OptionUnlessIn("start", "longer", "full-wall", "bore-wall", "burr", "feather", "blunt-start")},
		{Name: "say-nothing", Work: shared.OptionUnlessIn("start", "say-nothing", "full-wall", "bore-wall", "burr", "feather", "blunt-start")},
	},
})
