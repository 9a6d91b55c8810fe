package qti

import (
	"slices"
	"strconv"
)

// responses are what was answered: nil is NULL.
type responses map[string][]string

// result is what response processing gives: the score, and which feedback is shown.
type result struct {
	score    float64
	feedback string
}

// evaluator is response processing as the standard defines it, for the expressions
// that stand in our items. It knows nothing of quiz.
type evaluator struct {
	declared map[string]*tree
	given    responses
	outcomes map[string]string
}

func evaluate(item *tree, given responses) result {
	e := evaluator{map[string]*tree{}, given, map[string]string{}}
	for _, d := range item.all("responseDeclaration") {
		e.declared[d.attrs["identifier"]] = d
	}
	for _, d := range item.all("outcomeDeclaration") {
		if v := d.all("value"); len(v) > 0 {
			e.outcomes[d.attrs["identifier"]] = v[0].text
		}
	}
	for _, c := range item.kid("responseProcessing").kids {
		e.condition(c)
	}
	score, err := strconv.ParseFloat(e.outcomes["SCORE"], 64)
	if err != nil {
		panic(err)
	}
	return result{score, e.outcomes["FEEDBACK"]}
}

func (e *evaluator) condition(c *tree) {
	for _, branch := range c.kids {
		rest := branch.kids
		if branch.name != "responseElse" {
			if v := e.value(rest[0]); v == nil || v[0] != "true" {
				continue
			}
			rest = rest[1:]
		}
		for _, set := range rest {
			e.outcomes[set.attrs["identifier"]] = e.value(set.kids[0])[0]
		}
		return
	}
}

// value is the value of an expression; nil is NULL, and a NULL condition is not true.
func (e *evaluator) value(n *tree) []string {
	truth := func(b bool) []string { return []string{strconv.FormatBool(b)} }
	var args [][]string
	for _, k := range n.kids {
		args = append(args, e.value(k))
	}
	null := slices.ContainsFunc(args, func(a []string) bool { return a == nil })
	number := func(i int) float64 {
		x, err := strconv.ParseFloat(args[i][0], 64)
		if err != nil {
			panic(err)
		}
		return x
	}
	switch n.name {
	case "baseValue":
		return []string{n.text}
	case "variable":
		return e.given[n.attrs["identifier"]]
	case "correct":
		var all []string
		for _, v := range e.declared[n.attrs["identifier"]].all("value") {
			all = append(all, v.text)
		}
		return all
	case "multiple", "ordered":
		return slices.Concat(args...)
	case "isNull":
		return truth(args[0] == nil)
	case "and", "or":
		for _, a := range args {
			if a != nil && (a[0] == "true") == (n.name == "or") {
				return a
			}
		}
		if null {
			return nil
		}
		return truth(n.name == "and")
	}
	if null {
		return nil
	}
	switch n.name {
	case "not":
		return truth(args[0][0] != "true")
	case "gte":
		return truth(number(0) >= number(1))
	case "lte":
		return truth(number(0) <= number(1))
	case "lt":
		return truth(number(0) < number(1))
	case "match":
		if e.unordered(n) {
			return truth(slices.Equal(slices.Sorted(slices.Values(args[0])), slices.Sorted(slices.Values(args[1]))))
		}
		return truth(slices.Equal(args[0], args[1]))
	case "member":
		return truth(slices.Contains(args[1], args[0][0]))
	}
	panic("unknown expression " + n.name)
}

// unordered reports whether a match compares sets.
func (e *evaluator) unordered(n *tree) bool {
	for _, v := range n.all("variable") {
		if d := e.declared[v.attrs["identifier"]]; d != nil && d.attrs["cardinality"] == "multiple" {
			return true
		}
	}
	return false
}
