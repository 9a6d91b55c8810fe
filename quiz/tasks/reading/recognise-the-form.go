package reading

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// formsMet are the forms that a learner may be handed.
var formsMet = []string{"unified", "metric", "whitworth", "trapezoidal", "acme", "square", "buttress", "npt", "bspt"}

var _ = shared.Register(problem.Task{
	Name: "recognise-the-form", Stage: problem.Reading, Kind: answer.Choice,
	Inputs:  []problem.Input{{Name: "form", Symbol: "form", Type: problem.InputWord, Words: formsMet}},
	Sources: []string{"thread-angles", "bs84", "buttress", "handbook"},
	Draw:    shared.DrawSituation("form", calc.Outside, formsMet...),
	Work: shared.Decide("form", map[string]string{
		"unified": "is-unified", "metric": "is-metric", "whitworth": "is-whitworth", "trapezoidal": "is-trapezoidal", "acme": "is-acme",
		"square": "is-square", "buttress": "is-buttress", "npt": "is-npt", "bspt": "is-bspt",
	}),
	Errors: []problem.CommonError{
		{Name: "is-unified", Work: shared.OptionUnlessIn("form", "is-unified", "unified", "trapezoidal", "acme", "square", "buttress", "bspt")},
		{Name: "is-metric", Work: shared.OptionUnlessIn("form", "is-metric", "metric", "acme", "square", "buttress", "npt", "bspt")},
		{Name: "is-whitworth", Work: shared.OptionUnlessIn("form", "is-whitworth", "whitworth", "trapezoidal", "acme", "square", "buttress")},
		{Name: "is-trapezoidal", Work: shared.OptionUnlessIn("form", "is-trapezoidal", "trapezoidal", "unified", "metric", "whitworth", "npt", "bspt")},
		{Name: "is-acme", Work: shared.OptionUnlessIn("form", "is-acme", "acme", "unified", "metric", "whitworth", "npt", "bspt")},
		{Name: "is-square", Work: shared.OptionUnlessIn("form", "is-square", "square", "unified", "metric", "whitworth", "npt", "bspt")},
		{Name: "is-buttress", Work: shared.OptionUnlessIn("form", "is-buttress", "buttress", "unified", "metric", "whitworth", "npt", "bspt")},
		{Name: "is-npt", Work: shared.OptionUnlessIn("form", "is-npt", "npt", "trapezoidal", "acme", "square", "buttress")},
		{Name: "is-bspt", Work: shared.OptionUnlessIn("form", "is-bspt", "bspt", "trapezoidal", "acme", "square", "buttress")},
	},
})
