package wording

import (
	"errors"

	"scratchpass/content"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/problem"
)

// Drawing returns the figure beside the problem, drawn from the numbers that the problem
// gives and never one that is asked for; nil for none, or where the problem lacks a number
// that the figure can't do without.
func (w *Words) Drawing(p *problem.Problem, words map[string]content.DrawingWords) (*drawing.Drawing, error) {
	if w.Task.Drawing == "" {
		return nil, nil
	}
	d, err := drawing.Of(w.Task.Drawing, p.Values.Facts(), words)
	if errors.Is(err, drawing.ErrFacts) {
		return nil, nil
	}
	return &d, err
}
