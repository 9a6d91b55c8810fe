package reading

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "two-tolerance-classes", Stage: problem.Reading, Kind: answer.Choice,
	Inputs: []problem.Input{
		{Name: "checked", Symbol: "checked", Type: problem.InputWord,
			Words: []string{"screw-flanks", "screw-crests", "nut-flanks", "nut-crests", "one-class", "fit-screw", "fit-nut"}},
	},
	Systems: []machine.System{machine.Metric},
	Sources: []string{"iso-965"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		checked := problem.Pick(d, "screw-flanks", "screw-crests", "nut-flanks", "nut-crests", "one-class", "fit-screw", "fit-nut")
		class, side := problem.Pick(d, "4g6g", "5g6g"), calc.Outside
		switch checked {
		case "nut-flanks", "nut-crests":
			class, side = problem.Pick(d, "4H5H", "5H6H"), calc.Inside
		case "one-class":
			class = problem.Pick(d, "6g", "6h")
		case "fit-screw":
			class = problem.Pick(d, "6H/6g", "6H/5g6g", "6G/6h")
		case "fit-nut":
			class, side = problem.Pick(d, "6H/6g", "5H6H/6g", "6G/6h"), calc.Inside
		}
		t := d.Thread(calc.Millimetres(1), calc.Millimetres(4.5))
		v.SetWord("checked", checked)
		v.Say("callout", t.String()+"-"+class)
		d.Job(&v, side)
		return v
	},
	Work: shared.Decide("checked", map[string]string{
		"screw-flanks": "first", "screw-crests": "second", "nut-flanks": "first", "nut-crests": "second",
		"one-class": "single", "fit-screw": "behind-slash", "fit-nut": "before-slash",
	}),
	Errors: []problem.CommonError{
		{Name: "first", Work: shared.OptionUnlessIn("checked", "first", "screw-flanks", "nut-flanks", "one-class", "fit-screw", "fit-nut")},
		{Name: "second", Work: shared.OptionUnlessIn("checked", "second", "screw-crests", "nut-crests", "one-class", "fit-screw", "fit-nut")},
		{Name: "looser", Work: shared.OptionUnlessIn("checked", "looser", "screw-crests", "nut-crests", "one-class", "fit-screw", "fit-nut")},
		{Name: "closer", Work: shared.OptionUnlessIn("checked", "closer", "screw-flanks", "nut-flanks", "one-class", "fit-screw", "fit-nut")},
		{Name: "both", Work: shared.OptionUnlessIn("checked", "both", "one-class")},
		{Name: "flanks-only", Work: shared.OptionUnlessIn("checked", "flanks-only", "screw-flanks", "screw-crests", "nut-flanks", "nut-crests", "fit-screw", "fit-nut")},
		{Name: "bare", Work: shared.OptionUnlessIn("checked", "bare", "screw-flanks", "nut-flanks", "fit-screw", "fit-nut")},
		{Name: "nut-class", Work: shared.OptionUnlessIn("checked", "nut-class", "screw-flanks", "screw-crests", "nut-flanks", "nut-crests", "fit-screw", "fit-nut")},
		{Name: "fit-only", Work: shared.OptionUnlessIn("checked", "fit-only", "screw-flanks", "screw-crests", "nut-flanks", "nut-crests", "one-class")},
		{Name: "behind-slash", Work: shared.OptionUnlessIn("checked", "behind-slash", "fit-screw", "screw-flanks", "screw-crests", "nut-flanks", "nut-crests", "one-class")},
		{Name: "before-slash", Work: shared.OptionUnlessIn("checked", "before-slash", "fit-nut", "screw-flanks", "screw-crests", "nut-flanks", "nut-crests", "one-class")},
	},
})
