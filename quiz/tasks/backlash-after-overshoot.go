package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "backlash-after-overshoot", Stage: quiz.Infeed,
	Inputs: []quiz.Input{
		{Name: "where", Symbol: "where", Is: quiz.AWord, Words: []string{"past", "cut-taken", "lost"}},
		length("over", "o", 0.001, 0.02),
	},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("where", quiz.Pick(d, "past", "cut-taken", "lost"))
		v.SetLength("over", d.Length(2, 5, 5, 12))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Choice(map[string]string{"past": "back-and-up", "cut-taken": "log-it", "lost": "find-again"}[v.Word("where")])
	},
	Slips: []quiz.Slip{
		{Name: "just-back", Work: optionUnlessIn("where", "just-back", "cut-taken")},
		{Name: "leave"},
		{Name: "rezero"},
		{Name: "log-it", Work: optionUnlessIn("where", "log-it", "cut-taken", "lost")},
		{Name: "scrap-it", Work: optionUnlessIn("where", "scrap-it", "past", "lost")},
		{Name: "back-and-up", Work: optionUnlessIn("where", "back-and-up", "past", "cut-taken")},
	},
})
