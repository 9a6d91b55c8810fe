package own

import (
	"cmp"
	"fmt"
	"slices"

	"scratchpass/content"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// What is tried of one question, and what must be left of it.
const (
	tried       = 600 // draws
	fewest      = 6   // different problems, of a question that draws numbers
	fewestShare = 20  // one in so many draws may be kept
	mostOften   = 3   // of the reasons that are told
)

// Examine draws many problems of a question and tells what only that shows: a formula that
// has no value, and mistakes that land on the answer, or on one another, so often that too
// few problems are left.
func Examine(t *problem.Task, q *content.Question) content.Findings {
	system := machine.Imperial
	if !t.Allows(system) {
		system = t.Systems[0]
	}
	e := examined{different: map[string]bool{}, gives: map[string]int{}, alike: map[string]int{}}
	for seed := range uint32(tried) {
		p, err := problem.Once(t, problem.NewCode(t.Name, problem.NumbersGiven, system, seed, machine.DefaultLathe(system)))
		e.add(p, err)
	}
	return append(e.findings(t, q), apartForEver(q)...)
}

// apartForEver finds pairs of either that no right order has the other way round: a step
// between them keeps its place to both. Such a pair says nothing.
func apartForEver(q *content.Question) content.Findings {
	var found content.Findings
	free := func(a, b string) bool {
		return slices.ContainsFunc(q.Either, func(p []string) bool { return p[0] == a && p[1] == b || p[0] == b && p[1] == a })
	}
	for _, pair := range q.Either {
		from, to := slices.Index(q.Right, pair[0]), slices.Index(q.Right, pair[1])
		if from > to {
			from, to = to, from
		}
		after := map[int]bool{from: true} // steps that must come after the first of the pair
		held := ""
		for i := from + 1; i <= to; i++ {
			for j := from; j < i; j++ {
				if after[j] && !free(q.Right[j], q.Right[i]) {
					after[i] = true
				}
			}
			if after[i] && i < to && !free(q.Right[i], q.Right[to]) {
				held = q.Right[i]
			}
		}
		if after[to] {
			found = append(found, q.At("either", fmt.Sprintf("either: %s and %s never stand side by side, for %s stands between them; give a pair with it as well, or take this one out", pair[0], pair[1], held)))
		}
	}
	return found
}

// examined is what came of the draws.
type examined struct {
	worked, kept int
	failed       error
	different    map[string]bool
	gives        map[string]int // draws in which a mistake gives anything
	alike        map[string]int // and in which two can't be told apart, as it is said
}

func (e *examined) add(p *problem.Problem, err error) {
	if err != nil {
		e.failed = err
		return
	}
	e.worked++
	for _, known := range p.Expected.Errors {
		e.gives[known.Name]++
	}
	if !p.Ambiguous() {
		e.kept++
		e.different[fmt.Sprint(p.Values.Givens())] = true
		return
	}
	x := &p.Expected
	for i, known := range x.Errors {
		if x.Kind.Same(x, known.Response, x.Key, tooNear*x.Tolerance) {
			e.alike[known.Name+" gives the answer"]++
		}
		for _, other := range x.Errors[:i] {
			if x.Kind.Same(x, known.Response, other.Response, tooNear*x.ErrorTolerance) {
				e.alike[other.Name+" gives the same as "+known.Name]++
			}
		}
	}
}

// tooNear is how many tolerances two numbers lie apart at most that can't be told apart: a
// tolerance takes up no more than two fifths of the gap.
const tooNear = 2.6

// findings words it.
func (e *examined) findings(t *problem.Task, q *content.Question) content.Findings {
	var found content.Findings
	say := func(at, format string, args ...any) { found = append(found, q.At(at, fmt.Sprintf(format, args...))) }
	if e.failed != nil {
		say("answer", "in %d of %d draws there is no answer: %v", tried-e.worked, tried, e.failed)
	}
	if e.worked == 0 {
		return found
	}
	for _, mistake := range t.Errors {
		if e.gives[mistake.Name] == 0 {
			say(mistake.Name, "the mistake %s has no value in any of %d draws", mistake.Name, tried)
		}
	}
	few := len(t.Inputs) > 0 && len(e.different) < fewest
	if few || e.kept*fewestShare < e.worked {
		at := "inputs"
		if len(t.Inputs) == 0 {
			at = "mistakes"
		}
		say(at, "of %d draws %d can be asked, with %d different sets of numbers: give at least %d, by a wider range or other mistakes%s", tried, e.kept, len(e.different), fewest, e.why())
	}
	return found
}

// why are the commonest reasons for throwing a draw away.
func (e *examined) why() string {
	var reasons []string
	for reason := range e.alike {
		reasons = append(reasons, reason)
	}
	slices.SortFunc(reasons, func(a, b string) int {
		return cmp.Or(cmp.Compare(e.alike[b], e.alike[a]), cmp.Compare(a, b))
	})
	text := ""
	for _, reason := range reasons[:min(len(reasons), mostOften)] {
		text += fmt.Sprintf("; %s in %d", reason, e.alike[reason])
	}
	return text
}
