package quiz

// PaperExpects is Expects for an answer that is written by hand.
func (w *Words) PaperExpects(p *Problem) string {
	if phrase, ok := w.Phrases["paper-"+p.Answer.Kind.Name()]; ok {
		text, _ := w.fill(p, phrase)
		return text
	}
	return w.Expects(p)
}
