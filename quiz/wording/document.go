package wording

import (
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
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
	Kind   string      `json:"kind"`
	Value  string      `json:"value"`
	Unit   string      `json:"unit"`
	Low    *float64    `json:"low"`
	High   *float64    `json:"high"`
	Either [][2]string `json:"either,omitempty"` // numbers of steps of an order that may stand either way round
}

// SlipDocument is what a common error gives.
type SlipDocument struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// Document returns the problem as JSON shows it; with the key or without.
func (w *Words) Document(p *problem.Problem, key bool) ProblemDocument {
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
	for _, known := range p.Expected.Errors {
		doc.Slips = append(doc.Slips, SlipDocument{known.Name, w.bare(p.Expected.Kind.Print(&p.Expected, known.Response))})
	}
	return doc
}

func (w *Words) answerDocument(p *problem.Problem) *AnswerDocument {
	e := &p.Expected
	doc := &AnswerDocument{Kind: e.Kind.Name(), Value: w.bare(e.Kind.Print(e, e.Key)), Unit: e.Unit.Name}
	for _, pair := range e.Free {
		doc.Either = append(doc.Either, [2]string{e.Number(pair[0]), e.Number(pair[1])})
	}
	if low, high, ok := e.Bounds(); ok {
		low, high = calc.Round(low*e.Unit.Factor, 6), calc.Round(high*e.Unit.Factor, 6)
		doc.Low, doc.High = &low, &high
	}
	return doc
}

// bare joins the parts of a response without their unit.
func (w *Words) bare(parts []string) string {
	return strings.Join(parts, w.Phrases["between-readings"])
}

// MarkDocument is the JSON of a mark.
type MarkDocument struct {
	Code     string         `json:"code"`
	Given    string         `json:"given"`
	Verdict  answer.Verdict `json:"verdict"`
	Slip     string         `json:"slip"`
	Points   float64        `json:"points"`
	Feedback string         `json:"feedback"`
	Off      []OffDocument  `json:"off,omitempty"`
}

// OffDocument is by how much a number that counts as right is off the printed one.
type OffDocument struct {
	Number int     `json:"number"` // which of a row, from 1
	Value  float64 `json:"value"`  // above 0 where more was given
	Unit   string  `json:"unit"`
}

// MarkDocument returns a mark as JSON shows it. given is what was typed.
func (w *Words) MarkDocument(p *problem.Problem, given string, m answer.Mark) MarkDocument {
	doc := MarkDocument{p.Code.String(), given, m.Verdict, m.Error, m.Points, w.Feedback(p, m).Text(), nil}
	if m.Verdict == answer.Right {
		for _, off := range p.Expected.Off(m.Response) {
			doc.Off = append(doc.Off, OffDocument{off.Number, off.By, p.Expected.Unit.Name})
		}
	}
	return doc
}
