package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// feedToThread is the order of going over from the power feed to threading. Once the
// spindle stands still, gearbox and speed are set in either order.
var (
	feedToThread  = []string{"feed-off", "stop", "lever", "speed", "start", "watch", "close"}
	leverAndSpeed = [][2]string{{"lever", "speed"}}
)

var _ = shared.Register(problem.Task{
	Name: "feed-off-before-half-nut", Stage: problem.SetUp, Kind: answer.Order,
	Inputs:  []problem.Input{{Name: "side", Symbol: "side", Type: problem.InputWord, Words: []string{"outside", "inside"}}},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		side := problem.Pick(d, calc.Outside, calc.Inside)
		v.SetWord("side", side.String())
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().OrderWith(leverAndSpeed, feedToThread...)
	},
	Errors: []problem.CommonError{
		{Name: "both", Work: shared.InOrder("stop", "lever", "speed", "start", "watch", "close", "feed-off")},
		{Name: "lever-run", Work: shared.InOrder("feed-off", "lever", "speed", "stop", "start", "watch", "close")},
		{Name: "lever-first", Work: shared.InOrder("feed-off", "lever", "stop", "speed", "start", "watch", "close")},
		{Name: "trust-lock", Work: shared.InOrder("stop", "lever", "speed", "start", "feed-off", "watch", "close")},
		{Name: "lever-late", Work: shared.InOrder("feed-off", "stop", "speed", "start", "lever", "watch", "close")},
		{Name: "no-wait", Work: shared.InOrder("feed-off", "stop", "lever", "speed", "start", "close", "watch")},
	},
})
