package quiz

// Question returns what is asked, without the numbered lines that Ask puts below it:
// for pages that have a place of their own for options and for readings.
func (w *Words) Question(p *Problem) string {
	text, _ := w.question(p)
	return text
}

// ReadingLabels says what each number of a row of readings is.
func (w *Words) ReadingLabels(p *Problem) []string {
	labels := make([]string, len(w.Task.Readings))
	for i, label := range w.Task.Readings {
		labels[i], _ = w.fill(p, label)
	}
	return labels
}
