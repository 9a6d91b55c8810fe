package qti

import (
	"slices"
	"strconv"

	"scratchpass/quiz/answer"
)

// rule says what an answer is worth and what is said to it. The first rule that fits
// counts.
type rule struct {
	when   *node // nil fits everything: the last rule
	id     string
	points float64
	text   string
}

// rule adds the rule of a mark. exact says that the mark's response is just what was
// answered.
func (d *draft) rule(when *node, m answer.Mark, exact bool) { d.named(idOf(m), when, m, exact) }

// named is rule with the identifier of the feedback. Where that one says something
// else already, a figure is put behind it.
func (d *draft) named(id string, when *node, m answer.Mark, exact bool) {
	said := d.feedbackOf(m, exact)
	free := id
	for n := 2; slices.ContainsFunc(d.rules, func(r rule) bool { return r.id == free && r.text != said }); n++ {
		free = id + "-" + strconv.Itoa(n)
	}
	points := m.Points * d.Points
	if m.Verdict == answer.Convention {
		points *= 1 - d.pack.ConventionCosts
	}
	d.rules = append(d.rules, rule{when, free, points, said})
}

// unread adds the rule for no answer, half an answer, or a text where a number
// belongs. The last is no number at all to the standard, but some players hand the
// text on; it is then neither above 0 nor below.
func (d *draft) unread(responses ...string) {
	var none []*node
	for _, id := range responses {
		none = append(none, el("isNull").add(variable(id)))
		if d.isNumber(id) {
			none = append(none, el("not").add(anyOf(
				el("gte").add(variable(id), value("float", "0")), el("lt").add(variable(id), value("float", "0")))))
		}
	}
	d.rules = append(d.rules, rule{anyOf(none...), string(answer.Unread), 0, d.pack.Words.Unread})
}

// isNumber reports whether a response was declared as a number.
func (d *draft) isNumber(id string) bool {
	return slices.ContainsFunc(d.asks, func(n *node) bool {
		return slices.Contains(n.attrs, id) && slices.Contains(n.attrs, "float")
	})
}

// otherwise adds the last rule: wrong, and it can't be told which step it was.
func (d *draft) otherwise() {
	d.rule(nil, answer.Mark{Verdict: answer.Wrong, Response: d.Problem.Expected.Key}, false)
}

// processing is the rules as QTI has them: one condition, if and else if and else.
func (d *draft) processing() *node {
	condition := el("responseCondition")
	for i, r := range d.rules {
		branch := el("responseElseIf")
		switch {
		case i == 0:
			branch = el("responseIf")
		case r.when == nil:
			branch = el("responseElse")
		}
		if r.when != nil {
			branch.add(r.when)
		}
		condition.add(branch.add(
			el("setOutcomeValue", "identifier", "SCORE").add(value("float", decimal(r.points))),
			el("setOutcomeValue", "identifier", "FEEDBACK").add(value("identifier", r.id))))
	}
	return el("responseProcessing").add(condition)
}

func variable(id string) *node { return el("variable", "identifier", id) }

func correct(id string) *node { return el("correct", "identifier", id) }

func value(baseType, s string) *node { return leaf("baseValue", s, "baseType", baseType) }

func match(x, y *node) *node { return el("match").add(x, y) }

func allOf(terms ...*node) *node { return joined("and", terms) }

func anyOf(terms ...*node) *node { return joined("or", terms) }

func joined(with string, terms []*node) *node {
	if len(terms) == 1 {
		return terms[0]
	}
	return el(with).add(terms...)
}
