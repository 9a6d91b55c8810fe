package quiz

import (
	"scratchpass/calc"
)

// ProblemDocument is the JSON of one problem, as `work` and `quiz ask` print it.
type ProblemDocument struct {
	Task    string          `json:"task"`
	Code    string          `json:"code"`
	Given   []GivenDocument `json:"given"`
	Prompt  string          `json:"prompt"`
	Steps   []StepDocument  `json:"steps,omitempty"`
	Answer  *AnswerDocument `json:"answer,omitempty"`
	Slips   []SlipDocument  `json:"slips,omitempty"`
	Safety  []string        `json:"safety"`
	Sources []string        `json:"sources"`
}

// GivenDocument is one input.
type GivenDocument struct {
	Name   string `json:"name"`
	Symbol string `json:"symbol"`
	Value  string `json:"value"`
	Unit   string `json:"unit"`
}

// StepDocument is one step of the working.
type StepDocument struct {
	Symbol  string `json:"symbol"`
	Means   string `json:"means"`
	Formula string `json:"formula"`
	With    string `json:"with"`
	Value   string `json:"value"`
	Unit    string `json:"unit"`
}

// AnswerDocument is the key. Low and High are what is still right; they are null
// where an answer is not a number.
type AnswerDocument struct {
	Kind  string   `json:"kind"`
	Value string   `json:"value"`
	Unit  string   `json:"unit"`
	Low   *float64 `json:"low"`
	High  *float64 `json:"high"`
}

// SlipDocument is what a known wrong road gives.
type SlipDocument struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// Document returns the problem as JSON shows it; with the key or without.
func (w *Words) Document(p *Problem, key bool) ProblemDocument {
	prompt, _ := w.Ask(p)
	doc := ProblemDocument{Task: p.Task.Name, Given: []GivenDocument{}, Prompt: prompt, Safety: []string{}, Sources: []string{}}
	if p.Code.Task != "" {
		doc.Code = p.Code.String()
	}
	for _, g := range p.Values.Givens() {
		doc.Given = append(doc.Given, GivenDocument(g))
	}
	for _, k := range w.Task.Safety {
		doc.Safety = append(doc.Safety, w.Safety[k].Text)
	}
	doc.Sources = append(doc.Sources, p.Task.Sources...)
	if !key {
		return doc
	}
	for i, s := range p.Working.Steps {
		doc.Steps = append(doc.Steps, StepDocument{s.Symbol, w.Means(s.Symbol), s.Formula, p.Working.With(i), s.Value(), s.Unit.Name})
	}
	doc.Answer = w.answerDocument(p)
	for _, s := range p.slips {
		doc.Slips = append(doc.Slips, SlipDocument{s.slip.Name, p.bareAnswer(s.reply)})
	}
	return doc
}

func (w *Words) answerDocument(p *Problem) *AnswerDocument {
	a := &p.Answer
	doc := &AnswerDocument{Kind: a.Kind.Name(), Value: p.bareAnswer(a.Key), Unit: a.Unit.Name}
	bound := func(held float64) *float64 {
		shown := calc.Round(held*a.Unit.Factor, 6)
		return &shown
	}
	switch a.Kind.(type) {
	case quantity:
		low, high := a.Bounds()
		doc.Low, doc.High = bound(low), bound(high)
	case limits:
		doc.Low, doc.High = bound(a.Low), bound(a.High)
	}
	return doc
}

// bareAnswer prints a reply without its unit.
func (p *Problem) bareAnswer(r Reply) string {
	bare := p.Answer
	bare.Unit.Name = ""
	return bare.Kind.Show(&bare, r)
}

// MarkDocument is the JSON of a mark.
type MarkDocument struct {
	Code     string  `json:"code"`
	Given    string  `json:"given"`
	Verdict  Verdict `json:"verdict"`
	Slip     string  `json:"slip"`
	Points   float64 `json:"points"`
	Feedback string  `json:"feedback"`
}

// MarkDocument returns a mark as JSON shows it. given is what was typed.
func (w *Words) MarkDocument(p *Problem, given string, m Mark) MarkDocument {
	return MarkDocument{p.Code.String(), given, m.Verdict, m.Slip, m.Points, w.Feedback(p, m).Text()}
}
