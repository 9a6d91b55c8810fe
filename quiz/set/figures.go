package set

import (
	"regexp"

	"scratchpass/quiz"
)

// figuresOf are the figures of the questions of one sheet so far: a question must not
// give what another one asks for.
type figuresOf struct{ keys, given map[string]bool }

var decimalFigure = regexp.MustCompile(`\d+\.\d+`)

// figures are those with decimals in what a problem asks for and in what it gives.
func figures(w *quiz.Words, p *quiz.Problem) (keys, given []string) {
	switch p.Answer.Kind.Name() {
	case "quantity", "readings":
		keys = decimalFigure.FindAllString(p.Answer.Text(), -1)
	}
	text, _ := w.Ask(p)
	return keys, decimalFigure.FindAllString(text, -1)
}

func (f figuresOf) add(w *quiz.Words, p *quiz.Problem) {
	keys, given := figures(w, p)
	for _, k := range keys {
		f.keys[k] = true
	}
	for _, g := range given {
		f.given[g] = true
	}
}

// tell reports whether the problem gives what one before it asks for, or asks for what
// one before it gives.
func (f figuresOf) tell(w *quiz.Words, p *quiz.Problem) bool {
	keys, given := figures(w, p)
	for _, k := range keys {
		if f.given[k] {
			return true
		}
	}
	for _, g := range given {
		if f.keys[g] {
			return true
		}
	}
	return false
}
