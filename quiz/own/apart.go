package own

import (
	"maps"
	"slices"

	"scratchpass/quiz/answer"
)

// apart says which mistakes give what is right, or the same as one another. It is looked at
// once all names are those of options.
func (r *reader) apart(e *answer.Expected) {
	if len(r.found) > 0 {
		return
	}
	names := slices.Sorted(maps.Keys(r.q.Mistakes))
	for i, name := range names {
		gives := answer.OptionsResponse(r.q.Mistakes[name].Gives...)
		switch {
		case !e.Kind.Same(e, gives, e.Key, 0):
		case e.Kind.InOrder() && !slices.Equal(gives.Keys, e.Key.Keys):
			r.say(name, "the mistake %s gives an order that is right, for either lets its steps stand so: give another order, or take the pair out of either", name)
		default:
			r.say(name, "the mistake %s gives what is right: give what someone answers who makes it", name)
		}
		for _, other := range names[:i] {
			if e.Kind.Same(e, gives, answer.OptionsResponse(r.q.Mistakes[other].Gives...), 0) {
				r.say(name, "the mistake %s gives the same as %s: nobody could tell which was made; keep one", name, other)
			}
		}
	}
}

func first(names []string) string {
	if len(names) == 0 {
		return "name"
	}
	return names[0]
}
