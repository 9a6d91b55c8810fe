package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "undersize-part", Stage: quiz.Fitting,
	Inputs: []quiz.Input{
		{Name: "size", Symbol: "size", Is: quiz.AWord, Words: []string{"under", "over", "inside"}},
		length("by", "by", 0.0005, 0.01),
	},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("size", quiz.Pick(d, "under", "over", "inside"))
		v.SetLength("by", d.Length(1, 3, 2, 8))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"under": "report", "over": "light-cut", "inside": "stop"}[v.Word("size")])
	},
	Slips: []quiz.Slip{
		{Name: "spring", Work: optionUnlessIn("size", "spring", "over")},
		{Name: "swage", Work: optionUnlessIn("size", "swage", "over", "inside")},
		{Name: "class", Work: optionUnlessIn("size", "class", "over", "inside")},
		{Name: "report", Work: optionUnlessIn("size", "report", "under")},
		{Name: "light-cut", Work: optionUnlessIn("size", "light-cut", "over", "under")},
		{Name: "stop", Work: optionUnlessIn("size", "stop", "inside")},
		{Name: "file-crests", Work: optionUnlessIn("size", "file-crests", "under", "inside")},
	},
})
