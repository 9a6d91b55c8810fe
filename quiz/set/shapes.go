package set

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/problem"
)

// shape is what makes two problems of a task equally hard: the kind of answer, how many
// steps lead to it, how many digits and options it has, and how exact it must be. How many
// options are right is not of it: that is what such a question asks.
type shape struct {
	kind            string
	steps, digits   int
	options, inputs int
	tolerance       float64
}

// shapesTried is how many problems tell what is usual for a task.
const shapesTried = 48

// usual is the shape of a question that has the most different answers, so that few have
// one in common; of two such ones the one that more problems have, or that came first. With it
// come the halves of its answers.
func (m *Maker) usual(p int, task string) (shape, halves, error) {
	count, answers := map[shape]int{}, map[shape]map[string]bool{}
	drawn := map[shape][]*problem.Problem{}
	var best shape
	var last error
	for try := range shapesTried {
		it, err := m.draw(p, task, "\x00usual", try, nil, m.inOrder())
		if err != nil {
			last = err
			continue
		}
		s := shapeOf(it)
		if m.Blueprint.Rules.Unlike {
			s = shape{}
		}
		drawn[s] = append(drawn[s], it)
		if count[s]++; count[s] == 1 {
			answers[s] = map[string]bool{}
		}
		answers[s][meaning(it)] = true
		if cmp.Or(len(answers[s])-len(answers[best]), count[s]-count[best]) > 0 {
			best = s
		}
	}
	if len(count) == 0 {
		return best, halves{}, fmt.Errorf("%s: no problem can be made here: %w", task, last)
	}
	return best, halvesOf(drawn[best]), nil
}

// meaning is an answer without the order in which its options stand on one sheet.
func meaning(p *problem.Problem) string {
	if p.Task.Kind.Worded() && !p.Task.Kind.InOrder() {
		return strings.Join(slices.Sorted(slices.Values(p.Expected.Key.Keys)), " ")
	}
	return p.Expected.Text()
}

func shapeOf(p *problem.Problem) shape {
	kind := p.Task.Kind
	if kind.Guessable() { // a decision is as hard in one situation as in another
		return shape{kind: kind.Name()}
	}
	s := shape{kind: kind.Name(), steps: len(p.Working.Steps), options: len(p.Expected.Options), inputs: len(p.Values.Givens())}
	if kind.OneNumber() {
		for _, r := range p.Expected.Unit.Fixed(p.Expected.Key.X) {
			if r >= '1' && r <= '9' || r == '0' && s.digits > 0 {
				s.digits++
			}
		}
		if p.Task.Tolerance.Relative == 0 {
			s.tolerance = calc.Round(p.Expected.Tolerance*p.Expected.Unit.Factor, 5)
		}
	}
	return s
}
