package problems

import (
	"strings"

	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// workedPage is a problem's working with its key, what common errors give, and the
// cautions.
func workedPage(p *problem.Problem, w *wording.Words) page.Page {
	doc := w.Document(p, true)
	words := func(phrase string, pairs ...any) string {
		return content.FillPairs(w.Phrases["worked-"+phrase], pairs...)
	}
	var givens page.Givens
	for _, g := range doc.Given {
		label := words("given", "name", g.Name)
		if means := w.Means(g.Symbol); p.Task.Stage == problem.Own && means != "" { // the letter is all its name
			label = words("given-means", "means", means)
		}
		givens = append(givens, page.Given{Label: label, Symbol: g.Symbol, Value: g.Value, Unit: g.Unit})
	}
	var working page.Working
	for i, s := range doc.Steps {
		step := page.Step{Symbol: s.Symbol, Line: p.Working.Line(i)}
		if s.Means != "" {
			step.Means = words("means", "symbol", s.Symbol, "means", s.Means)
		}
		working = append(working, step)
	}
	shown := page.Page{givens, working}
	line := func(phrase string, pairs ...any) {
		shown = append(shown, page.Paragraph{Text: words(phrase, pairs...)})
	}
	line("answer", "answer", w.KeyText(p))
	if a := doc.Answer; a.Low != nil && a.High != nil {
		line("accepted", "low", *a.Low, "high", *a.High, "unit", a.Unit)
	}
	for _, s := range p.Expected.Errors {
		line("error", "name", s.Name, "answer", w.Shown(p, s.Response), "text", strings.TrimSpace(w.Task.Slips[s.Name]))
	}
	line("lathe", "text", w.Task.AtTheLathe)
	for _, c := range doc.Safety {
		line("caution", "text", c)
	}
	if len(doc.Sources) > 0 { // an instructor's own question names none
		line("sources", "sources", strings.Join(doc.Sources, ", "))
	}
	return shown
}
