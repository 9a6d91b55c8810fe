package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "way-to-feed-in", Stage: problem.Infeed, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "thread-is", Symbol: "thread-is", Type: problem.InputWord, Words: []string{"fine", "coarse", "rubbing", "both-edges", "along-bed"}}},
	Sources: []string{"navy", "insert-makers-infeed", "common-practice"},
	Draw:    shared.DrawSituation("thread-is", calc.Outside, "fine", "coarse", "rubbing", "both-edges", "along-bed"),
	Work: shared.Decide("thread-is", map[string]string{
		"fine": "straight", "coarse": "compound", "rubbing": "less", "both-edges": "alternate", "along-bed": "straight",
	}),
	Errors: []problem.CommonError{
		{Name: "straight", Work: shared.OptionUnlessIn("thread-is", "straight", "fine", "along-bed")},
		// Not wrong on a fine thread, only needless: not offered there.
		{Name: "compound", Work: shared.OptionUnlessIn("thread-is", "compound", "coarse", "fine", "rubbing", "both-edges")},
		{Name: "alternate", Work: shared.OptionUnlessIn("thread-is", "alternate", "both-edges", "coarse", "along-bed", "rubbing")},
		{Name: "exactly", Work: shared.OptionUnlessIn("thread-is", "exactly", "fine", "coarse", "along-bed")},
		{Name: "over"},
		{Name: "heavy"},
	},
})
