package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

// feedToThread is the order of going over from the power feed to threading.
var feedToThread = []string{"feed-off", "stop", "lever", "start", "watch", "close"}

var _ = register(quiz.Task{
	Name: "feed-off-before-half-nut", Stage: quiz.SetUp,
	Inputs:  []quiz.Input{{Name: "side", Symbol: "side", Is: quiz.AWord, Words: []string{"outside", "inside"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		side := quiz.Pick(d, calc.Outside, calc.Inside)
		v.SetWord("side", side.String())
		d.Job(&v, side)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) { return v.Working().Order(feedToThread...) },
	Slips: []quiz.Slip{
		{Name: "both", Work: inOrder("stop", "lever", "start", "watch", "close", "feed-off")},
		{Name: "lever-run", Work: inOrder("feed-off", "lever", "stop", "start", "watch", "close")},
		{Name: "trust-lock", Work: inOrder("stop", "lever", "start", "feed-off", "watch", "close")},
		{Name: "lever-late", Work: inOrder("feed-off", "stop", "start", "lever", "watch", "close")},
		{Name: "no-wait", Work: inOrder("feed-off", "stop", "lever", "start", "close", "watch")},
	},
})
