package safety

import (
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// startChecks are the checks before the spindle starts, as they are listed.
var startChecks = []string{"eyes", "sleeves", "gloves", "key", "guard", "stop"}

// leftToDo are the checks that a scene leaves to do.
var leftToDo = map[string][]string{
	"sharp-thread": {"gloves", "key"},
	"clear-view":   {"eyes", "guard"},
	"new-lathe":    {"key", "guard", "stop"},
	"cold-morning": {"sleeves", "gloves"},
}

var _ = shared.Register(problem.Task{
	Name: "ready-to-start", Stage: problem.Safety, Kind: answer.Several, SafetyCritical: true,
	Inputs:  []problem.Input{{Name: "scene", Symbol: "scene", Type: problem.InputWord, Words: []string{"sharp-thread", "clear-view", "new-lathe", "cold-morning"}}},
	Sources: []string{"shop-safety"},
	Draw:    shared.DrawSituation("scene", calc.Outside, "sharp-thread", "clear-view", "new-lathe", "cold-morning"),
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Several(startChecks, leftToDo[v.Word("scene")])
	},
	Errors: []problem.CommonError{
		{Name: "gloves-ok", Work: leftUndone("gloves")},
		{Name: "key-later", Work: leftUndone("key")},
		{Name: "guard-off", Work: leftUndone("guard")},
		{Name: "no-glasses", Work: leftUndone("eyes")},
		{Name: "loose-sleeves", Work: leftUndone("sleeves")},
		{Name: "stop-unknown", Work: leftUndone("stop")},
		{Name: "as-it-is", Work: func(problem.Values) answer.Response { return answer.OptionsResponse() }},
	},
})

// leftUndone is the error of seeing to everything but one check.
func leftUndone(check string) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		todo := leftToDo[v.Word("scene")]
		if !slices.Contains(todo, check) {
			return answer.NoResponse
		}
		return answer.OptionsResponse(slices.DeleteFunc(slices.Clone(todo), func(c string) bool { return c == check })...)
	}
}
