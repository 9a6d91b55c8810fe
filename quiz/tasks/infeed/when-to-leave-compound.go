package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "when-to-leave-compound", Stage: problem.Infeed, Kind: answer.Choice,
	Inputs:  []problem.Input{fitInput, shared.LengthInput("done", "c1", 0, 0.5), shared.LengthInput("estimate", "q", 0.01, 0.5)},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		estimate := d.Length(50, 110, 120, 280)
		fit := problem.Pick(d, "binds", "no-start", "free")
		// Where it binds only a little is left: with more, light compound cuts would do.
		binding := 1 - d.Length(2, 4, 5, 10).Over(estimate)
		share := map[string]float64{"binds": binding, "no-start": 0.65, "free": 0.96}[fit]
		v.SetWord("fit", fit)
		v.SetLength("estimate", estimate)
		if d.System == machine.Metric {
			v.SetLength("done", calc.Millimetres(calc.Round(estimate.Millimetres()*share, 2)))
		} else {
			v.SetLength("done", calc.Inches(calc.Round(estimate.Inches()*share, 3)))
		}
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		share := v.Length("done").Over(v.Length("estimate"))
		if fit := v.Word("fit"); fit == "binds" && share < 0.8 || fit == "no-start" && share > 0.85 || share > 1.01 {
			return problem.Working{}, &calc.InputError{What: "fit", Got: calc.Quoted(fit),
				Want: "a fit that goes with the depth; here something else is wrong: check pitch, burrs, tool and blank, and ask"}
		}
		switch v.Word("fit") {
		case "no-start":
			return w.Choice("light-compound")
		case "free":
			return w.Choice("call-it-done")
		}
		return w.Choice("straight-in")
	},
	Errors: []problem.CommonError{
		{Name: "dial-it-all"},
		{Name: "force-it"},
		{Name: "big-cut"},
		{Name: "light-compound", Work: shared.OptionUnlessIn("fit", "light-compound", "no-start")},
		{Name: "straight-in", Work: shared.OptionUnlessIn("fit", "straight-in", "binds")},
		{Name: "call-it-done", Work: shared.OptionUnlessIn("fit", "call-it-done", "free")},
	},
})

var fitInput = problem.Input{Name: "fit", Symbol: "fit", Type: problem.InputWord, Words: []string{"binds", "no-start", "free"}}
