package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "backlash-after-overshoot", Stage: problem.Infeed, Kind: answer.Choice,
	Inputs: []problem.Input{
		{Name: "where", Symbol: "where", Type: problem.InputWord, Words: []string{"past", "cut-taken", "lost"}},
		shared.LengthInput("over", "o", 0.001, 0.02),
	},
	Sources: []string{"common-practice"},
	Draw:    shared.DrawSituationWith("where", calc.Outside, shared.DrawLength("over", 2, 5, 5, 12), "past", "cut-taken", "lost"),
	Work:    shared.Decide("where", map[string]string{"past": "back-and-up", "cut-taken": "log-it", "lost": "find-again"}),
	Errors: []problem.CommonError{
		{Name: "just-back", Work: shared.OptionUnlessIn("where", "just-back", "cut-taken")},
		{Name: "leave"},
		{Name: "rezero"},
		{Name: "log-it", Work: shared.OptionUnlessIn("where", "log-it", "cut-taken", "lost")},
		{Name: "scrap-it", Work: shared.OptionUnlessIn("where", "scrap-it", "past", "lost")},
		{Name: "back-and-up", Work: shared.OptionUnlessIn("where", "back-and-up", "past", "cut-taken")},
	},
})
