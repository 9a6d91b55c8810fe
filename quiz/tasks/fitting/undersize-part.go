package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "undersize-part", Stage: problem.Fitting, Kind: answer.Choice,
	Inputs: []problem.Input{
		{Name: "size", Symbol: "size", Type: problem.InputWord, Words: []string{"under", "over", "inside"}},
		shared.LengthInput("by", "by", 0.0005, 0.01),
	},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord("size", problem.Pick(d, "under", "over", "inside"))
		v.SetLength("by", d.Length(1, 3, 2, 8))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"under": "report", "over": "light-cut", "inside": "stop"}[v.Word("size")])
	},
	Errors: []problem.CommonError{
		{Name: "spring", Work: shared.OptionUnlessIn("size", "spring", "over")},
		{Name: "swage", Work: shared.OptionUnlessIn("size", "swage", "over", "inside")},
		{Name: "class", Work: shared.OptionUnlessIn("size", "class", "over", "inside")},
		{Name: "report", Work: shared.OptionUnlessIn("size", "report", "under")},
		{Name: "light-cut", Work: shared.OptionUnlessIn("size", "light-cut", "over", "under")},
		{Name: "stop", Work: shared.OptionUnlessIn("size", "stop", "inside")},
		{Name: "file-crests", Work: shared.OptionUnlessIn("size", "file-crests", "under", "inside")},
	},
})
