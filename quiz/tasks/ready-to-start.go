package tasks

import (
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz"
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

var _ = register(quiz.Task{
	Name: "ready-to-start", Stage: quiz.Safety, Gate: true,
	Inputs:  []quiz.Input{{Name: "scene", Symbol: "scene", Is: quiz.AWord, Words: []string{"sharp-thread", "clear-view", "new-lathe", "cold-morning"}}},
	Sources: []string{"shop-safety"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.SetWord("scene", quiz.Pick(d, "sharp-thread", "clear-view", "new-lathe", "cold-morning"))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		return v.Working().Several(startChecks, leftToDo[v.Word("scene")])
	},
	Slips: []quiz.Slip{
		{Name: "gloves-ok", Work: leftUndone("gloves")},
		{Name: "key-later", Work: leftUndone("key")},
		{Name: "guard-off", Work: leftUndone("guard")},
		{Name: "no-glasses", Work: leftUndone("eyes")},
		{Name: "loose-sleeves", Work: leftUndone("sleeves")},
		{Name: "stop-unknown", Work: leftUndone("stop")},
		{Name: "as-it-is", Work: func(quiz.Values) quiz.Reply { return quiz.Keys() }},
	},
})

// leftUndone is the slip of seeing to everything but one check.
func leftUndone(check string) func(quiz.Values) quiz.Reply {
	return func(v quiz.Values) quiz.Reply {
		todo := leftToDo[v.Word("scene")]
		if !slices.Contains(todo, check) {
			return quiz.NoAnswer
		}
		return quiz.Keys(slices.DeleteFunc(slices.Clone(todo), func(c string) bool { return c == check })...)
	}
}
