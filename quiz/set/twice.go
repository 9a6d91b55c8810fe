package set

import (
	"reflect"
	"strings"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

// mostDiffering is how many questions with answers that differ are told one by one.
const mostDiffering = 20

// Differing is a question that someone answered twice, each time otherwise.
type Differing struct {
	Name    string // whose sheet it is, with its code
	Number  int    // as printed
	Answers []Source
}

// answerTo are the answers that someone gave to a question: one that is blank where none
// came, and only the first of several that are the same. differ tells of several others.
func (k *Marker) answerTo(o owner, it Item) (given []Given, differ bool) {
	all := k.typed[o][it.Problem.Code.String()]
	if paper, also := k.given[o][it.Number]; also {
		all = append(all[:len(all):len(all)], paper)
	}
	for _, g := range all {
		if g.Text != "" && (g.typed() || !blank(g.Text)) { // feedback came after a pass on a screen
			given = append(given, g)
		}
	}
	switch {
	case len(given) > 0:
	case len(all) > 0:
		return all[:1], false
	default:
		return []Given{{}}, false
	}
	for _, g := range given[1:] {
		differ = differ || !k.same(it, given[0], g)
	}
	if !differ {
		for _, g := range given[1:] {
			k.repeat(given[0], g)
		}
		given = given[:1]
	}
	return given, differ
}

// same reports whether two answers to a question say the same, such as 0.05 and 0.050 in.
func (k *Marker) same(it Item, a, b Given) bool {
	p := it.Problem
	if len(it.From) > 0 {
		if a.typed() != b.typed() { // on the screen and on paper it has other numbers
			return false
		}
		if a.typed() {
			p = alone(it)
		}
	}
	if strings.EqualFold(a.Text, b.Text) && a.Comma == b.Comma {
		return true
	}
	x, y := p.Mark(k.text(it, a)), p.Mark(k.text(it, b))
	if x.Verdict == answer.Unread || x.Verdict != y.Verdict || x.Points != y.Points {
		return false
	}
	for _, r := range []*answer.Response{&x.Response, &y.Response} {
		r.Unit, r.Coarse = "", false
	}
	return reflect.DeepEqual(x.Response, y.Response)
}

// alone is the problem of a question as it stands on a screen, where it starts from no
// answer of another.
func alone(it Item) *problem.Problem {
	if own, err := problem.New(it.Problem.Task, it.Problem.Code); err == nil {
		return own
	}
	return it.Problem
}

// text is an answer as it is read: a screen has read commas itself.
func (k *Marker) text(it Item, g Given) string {
	if g.typed() {
		return g.Text
	}
	return k.decimals(it, g)
}

// leave leaves answers that differ to the instructor.
func (k *Marker) leave(res *ItemResult, name string, given []Given) {
	var texts []string
	for _, g := range given {
		texts = append(texts, g.Text)
		res.Twice = append(res.Twice, Source{g.Text, g.Where()})
	}
	res.Verdict, res.Given, res.Certainty = Twice, strings.Join(texts, " | "), answer.NotAsked
	if k.Differ++; len(k.Differing) < mostDiffering {
		k.Differing = append(k.Differing, Differing{name, res.Number, res.Twice})
	}
}
