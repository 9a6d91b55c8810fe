package sitting

import (
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/arithmetic"
	"scratchpass/quiz/drawing"
)

// mostTerms is how many terms a word explains at the most.
const mostTerms = 3

// beside is what is shown for something that is typed beside the answer: = and a sum is
// worked out, ? and a word of the trade is explained. ok is false for all else.
func (s *Session) beside(reply string) (p page.Page, ok bool) {
	switch {
	case strings.HasPrefix(reply, "="):
		return page.Page{page.Paragraph{Text: s.workedOut(strings.TrimSpace(reply[1:]))}}, true
	case strings.HasPrefix(reply, "?") && strings.TrimSpace(reply[1:]) != "":
		return s.explained(strings.TrimSpace(reply[1:])), true
	}
	return nil, false
}

// Explained is what ? and a word of the trade shows; ok is false for all else.
func (s *Session) Explained(reply string) (p page.Page, ok bool) {
	if reply = strings.TrimSpace(reply); !strings.HasPrefix(reply, "?") {
		return nil, false
	}
	return s.beside(reply)
}

// workedOut is a sum and its value.
func (s *Session) workedOut(sum string) string {
	if sum == "" {
		return s.Say("say-sum")
	}
	x, err := arithmetic.Value(sum)
	if err != nil {
		return s.Say("say-no-sum", "problem", err)
	}
	return s.Say("say-worked", "sum", sum, "value", calc.Shortest(x, 6))
}

// explained is what a word of the trade means.
func (s *Session) explained(word string) page.Page {
	terms, err := s.Library.Terms()
	if err != nil {
		return page.Page{page.Paragraph{Text: s.Say("say-no-term", "word", calc.Quoted(word))}}
	}
	found := content.FindTerms(terms, word)
	if len(found) == 0 {
		return page.Page{page.Paragraph{Text: s.Say("say-no-term", "word", calc.Quoted(word))}}
	}
	var p page.Page
	for _, name := range found[:min(len(found), mostTerms)] {
		p = append(p, page.Paragraph{Text: s.Say("say-term", "term", name, "means", terms[name].Means)})
	}
	if d, ok := drawing.LathePart(found[0], s.drawings); ok {
		f := s.Figure(d)
		f.Caption = ""
		p = append(p, f)
	}
	return p
}
