package set

import (
	"regexp"
	"slices"

	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// figures are the numbers with decimals in what a question asks for and in what it gives.
type figures struct{ keys, given []string }

var decimalFigure = regexp.MustCompile(`\d+\.\d+`)

func figuresOf(w *wording.Words, p *problem.Problem) figures {
	var f figures
	for _, figure := range p.Task.Kind.Figures(&p.Expected) {
		f.keys = append(f.keys, decimalFigure.FindAllString(figure, -1)...)
	}
	text, _ := w.Ask(p)
	f.given = decimalFigure.FindAllString(text, -1)
	return f
}

// sheetFigures are the figures of the questions of one sheet so far: a question must not
// give what another one asks for.
type sheetFigures struct{ keys, given map[string]bool }

func (s sheetFigures) add(f figures) {
	for _, k := range f.keys {
		s.keys[k] = true
	}
	for _, g := range f.given {
		s.given[g] = true
	}
}

// tell reports whether a question gives what one before it asks for, or asks for what
// one before it gives.
func (s sheetFigures) tell(f figures) bool {
	return slices.ContainsFunc(f.keys, func(k string) bool { return s.given[k] }) ||
		slices.ContainsFunc(f.given, func(g string) bool { return s.keys[g] })
}
