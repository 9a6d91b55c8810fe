package wording

import (
	"scratchpass/content"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// DialDrawing is the drawing of a task that has one turn of a dial and a starting
// reading: the dial's face at that reading.
const DialDrawing = "dial"

// Drawing returns what a printed sheet shows beside the problem; nil for nothing. It
// has letters, or figures that the problem gives, and never one that is asked for.
func (w *Words) Drawing(p *problem.Problem, words map[string]content.DrawingWords) (*drawing.Drawing, error) {
	var d drawing.Drawing
	var err error
	switch w.Task.Drawing {
	case "":
		return nil, nil
	case DialDrawing:
		if !p.Values.Has("turn") || !p.Values.Has("start") {
			return nil, nil
		}
		d, err = drawing.SlideDial(w.Phrases["word-compound"], p.Values.Length("start"), p.Values.Length("turn"), p.Values.System == machine.Metric, words)
	default:
		d, err = drawing.WithLetters(w.Task.Drawing, words)
	}
	return &d, err
}
