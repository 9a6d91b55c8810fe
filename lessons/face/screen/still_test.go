package screen

import (
	"strconv"

	tea "github.com/charmbracelet/bubbletea"

	"scratchpass/lessons/page"
)

// Still is the screen without a terminal: what would be seen is handed to whoever answers.
// Tests keep it as a picture.
type Still struct {
	// Answer gets each prompt with what is to be seen then, and answers it.
	Answer func(q page.Prompt, seen string) (string, error)

	m     *model
	pages page.Page
}

var _ page.Face = (*Still)(nil)

// NewStill returns a screen of a size.
func NewStill(columns, rows int, look Look, words Words) *Still {
	return &Still{m: &model{theme: newTheme(look), words: words, columns: columns, rows: rows}}
}

// Show puts a page on the sheet.
func (s *Still) Show(p page.Page) error {
	s.pages = append(s.pages, p...)
	if !pauses(p) {
		return nil
	}
	_, err := s.Ask(page.Prompt{Takes: page.GoOn{}})
	return err
}

// Ask shows what has come, and asks.
func (s *Still) Ask(q page.Prompt) (string, error) {
	answer := make(chan reply, 1)
	s.m.Update(asking{s.pages, q, answer})
	s.pages = nil
	for len(s.m.waiting) > 0 { // a step that only has to be turned over
		s.m.from = len(s.m.text) // it has been read to its end
		s.m.key(tea.KeyMsg{Type: tea.KeyEnter})
	}
	text, err := s.Answer(s.m.now, s.m.View())
	if err != nil {
		return "", err
	}
	s.put(text)
	s.m.done(reply{text: text})
	return text, nil
}

// put makes an answer in the field.
func (s *Still) put(text string) {
	if n, err := strconv.Atoi(text); err == nil && s.m.field.choice != nil {
		s.m.field.goTo(n)
	}
	*s.m.field.typed = text
}
