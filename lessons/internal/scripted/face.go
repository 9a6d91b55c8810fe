// Package scripted is a face for tests: it answers as it is told and keeps all that was
// said.
package scripted

import (
	"fmt"
	"strings"

	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
)

// Face answers as it is told.
type Face struct {
	Answer  func(q page.Prompt) (string, error)
	Shown   []page.Page
	Replies []string
	Log     strings.Builder
}

var _ page.Face = (*Face)(nil)

// Show keeps a page.
func (f *Face) Show(p page.Page) error {
	f.Shown = append(f.Shown, p)
	for _, l := range text.Lines(p, true) {
		if l.Role != text.Picture && l.Text != "" {
			fmt.Fprintln(&f.Log, text.Wrap(l.Text, 78))
		}
	}
	fmt.Fprintln(&f.Log)
	return nil
}

// Ask answers.
func (f *Face) Ask(q page.Prompt) (string, error) {
	for i, o := range q.Options() {
		fmt.Fprintf(&f.Log, "%d) %s\n", i+1, o)
	}
	if len(f.Replies) > 5000 { // an answer that can't be read is asked for again, for ever
		return "", fmt.Errorf("asked 5,000 times, last %q", q.Text)
	}
	reply, err := f.Answer(q)
	if err == nil {
		f.Replies = append(f.Replies, reply)
		fmt.Fprintf(&f.Log, "%s > %s\n", q.Text, reply)
	}
	return reply, err
}

// Words are the words of a page, one space between them: what must be the same on every
// face.
func Words(p page.Page) string {
	var words []string
	for _, l := range text.Lines(p, true) {
		if l.Role != text.Picture {
			words = append(words, strings.Fields(l.Text)...)
		}
	}
	return strings.Join(words, " ")
}
