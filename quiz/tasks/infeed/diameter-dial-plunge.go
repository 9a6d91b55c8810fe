package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "diameter-dial-plunge", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    problem.ThreadInputs,
	Tolerance: answer.Tolerance{Inch: 0.001, MM: 0.025},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"dial-marking", "navy"},
	Draw:      drawPlunge,
	Work:      func(v problem.Values) (problem.Working, error) { return workPlunge(v, calc.MoveOnDiameterDial) },
	Errors: []problem.CommonError{
		{Name: "radius-habit", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(shared.ExternalDepth(v)) }},
		{Name: "four", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(shared.ExternalDepth(v).Times(4)) }},
		{Name: "cos", Work: plungeWithAngle},
		{Name: "inside-factor", Work: plungeInside(2)},
		{Name: "rounded-pitch", Work: plungeRounded(2)},
	},
})
