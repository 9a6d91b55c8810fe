package wording

import "scratchpass/quiz/problem"

// Question returns what is asked, without the numbered lines that Ask puts below it:
// for pages that have a place of their own for options and for readings.
func (w *Words) Question(p *problem.Problem) string {
	text, _ := w.question(p)
	return text
}

// ReadingLabels says what each number of a row of readings is.
func (w *Words) ReadingLabels(p *problem.Problem) []string {
	labels := make([]string, len(w.Task.Readings))
	for i, label := range w.Task.Readings {
		labels[i], _ = w.fill(p, label)
	}
	return labels
}

// PaperExpects is Expects for an answer that is written by hand.
func (w *Words) PaperExpects(p *problem.Problem) string {
	if phrase, ok := w.Phrases["paper-"+p.Expected.Kind.Name()]; ok {
		text, _ := w.fill(p, phrase)
		return text
	}
	return w.Expects(p)
}
