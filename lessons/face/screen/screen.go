// Package screen is the face for a person at a keyboard: a frame that says where one is
// and which keys work, a sheet between its lines from which nothing scrolls away unread,
// and a field for the answer. It is the only one that knows the form library.
package screen

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	tea "github.com/charmbracelet/bubbletea"

	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
)

// Screen is a real terminal. It is taken over when something is first asked, and given
// back by Close.
type Screen struct {
	Stop  context.Context // when it ends, no more is asked
	In    io.Reader
	Out   io.Writer
	Size  func() (columns, rows int)
	Words Words
	Look  func() Look // asked once

	start   sync.Once
	program *tea.Program
	ended   chan struct{}
	failed  error     // why the program ended, if it did by itself
	pages   page.Page // shown since the last question
}

var _ page.Face = (*Screen)(nil)
var _ page.Animator = (*Screen)(nil)
var _ page.Timer = (*Screen)(nil)

// Show puts a page on the sheet, which is seen when something is asked. One with a pause
// waits until it has been read.
func (s *Screen) Show(p page.Page) error {
	s.pages = append(s.pages, p...)
	for _, b := range p {
		if now, ok := b.(page.Now); ok && s.program != nil {
			s.program.Send(now)
		}
	}
	if !pauses(p) {
		return nil
	}
	_, err := s.Ask(page.Prompt{Takes: page.GoOn{}})
	return err
}

// pauses tells a page that is to be read before anything else comes.
func pauses(p page.Page) bool { return slices.Contains(p, page.Block(page.Pause{})) }

// Ask shows what has come, and asks.
func (s *Screen) Ask(q page.Prompt) (string, error) {
	if s.Stop.Err() != nil {
		return "", page.ErrStopped
	}
	s.begin()
	answer := make(chan reply, 1)
	s.program.Send(asking{s.pages, q, answer})
	s.pages = nil
	r, err := await(s, answer)
	if err != nil {
		return "", err
	}
	return r.text, r.err
}

// await waits for what the program sends back; ErrStopped where no more will come.
func await[T any](s *Screen, from <-chan T) (got T, err error) {
	select {
	case got = <-from:
		return got, nil
	case <-s.ended:
		if s.failed != nil {
			return got, s.failed
		}
	case <-s.Stop.Done():
	}
	return got, page.ErrStopped
}

// begin takes the terminal over.
func (s *Screen) begin() {
	s.start.Do(func() {
		m := &model{theme: newTheme(s.Look()), words: s.Words}
		m.columns, m.rows = s.Size()
		s.ended = make(chan struct{})
		s.program = tea.NewProgram(m, tea.WithInput(s.In), tea.WithOutput(s.Out), tea.WithAltScreen(), tea.WithoutSignalHandler(), tea.WithFPS(framesPerSecond))
		go func() {
			defer close(s.ended)
			_, s.failed = s.program.Run()
		}()
	})
}

// Close gives the terminal back. What was shown since the last question and not seen goes
// with it to where the terminal was left.
func (s *Screen) Close() error {
	if s.program == nil {
		return s.rest()
	}
	s.program.Quit()
	<-s.ended
	if err := s.rest(); err != nil {
		return err
	}
	return s.failed
}

// rest prints what was never asked about: what a sitting came to.
func (s *Screen) rest() error {
	if len(s.pages) == 0 {
		return nil
	}
	columns, _ := s.Size()
	lines := Lay(s.pages, max(text.NarrowestWidth, min(columns-1, broad)), s.Look())
	s.pages = nil
	_, err := fmt.Fprintln(s.Out, strings.Join(lines, "\n")+"\n")
	return err
}
