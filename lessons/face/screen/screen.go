// Package screen is the face for a person at a keyboard. It is the only one that knows
// the form library.
package screen

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/huh"
	"github.com/charmbracelet/lipgloss"

	"scratchpass/content"
	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
)

// Screen is a real terminal.
type Screen struct {
	Stop context.Context // when it ends, no more is asked
	In   io.Reader
	Out  io.Writer
	Size func() (columns, rows int) // asked anew each time: windows are resized
	More string                     // what stands under a page that is not the last
}

var _ page.Face = (*Screen)(nil)

// styles are the looks of a text. Colours are of the terminal's own sixteen, so
// that they follow its light or dark background; no meaning is in colour alone.
var styles = map[text.Role]lipgloss.Style{
	text.Heading: lipgloss.NewStyle().Bold(true),
	text.Caution: lipgloss.NewStyle().Bold(true),
	text.Good:    lipgloss.NewStyle().Bold(true).Foreground(lipgloss.Color("6")),
	text.Bad:     lipgloss.NewStyle().Bold(true).Foreground(lipgloss.Color("5")),
	text.Faint:   lipgloss.NewStyle().Italic(true),
}

// widest is the longest line that is comfortable to read.
const widest = 78

func (s *Screen) width() int {
	columns, _ := s.Size()
	return max(text.NarrowestWidth, min(columns-1, widest))
}

// Show prints a page and holds it up when it is longer than the window.
func (s *Screen) Show(p page.Page) error {
	lines := Lay(p, s.width())
	_, rows := s.Size()
	room := max(6, rows-3)
	for len(lines) > room {
		if _, err := fmt.Fprintln(s.Out, strings.Join(lines[:room], "\n")); err != nil {
			return err
		}
		lines = lines[room:]
		if err := s.run(huh.NewNote().Title(s.More), onlyEnter); err != nil {
			return err
		}
	}
	_, err := fmt.Fprintln(s.Out, strings.Join(lines, "\n")+"\n")
	return err
}

// onlyEnter lets Enter through and the keys that leave: what someone types ahead is not
// taken for leafing on, and is not lost to the question after it unseen.
func onlyEnter(k tea.KeyMsg) tea.Msg {
	switch k.Type {
	case tea.KeyEnter, tea.KeyCtrlC, tea.KeyEsc:
		return k
	}
	return nil
}

// Lay lays a page out in lines of at most width columns.
func Lay(p page.Page, width int) []string {
	var lines []string
	for _, l := range text.Lines(p, width < text.ColumnsFrom-1) {
		switch {
		case l.Draw != nil:
			lines = append(lines, l.Draw(width)...)
			continue
		case l.Text == "":
			continue
		}
		style, styled := styles[l.Role]
		for _, line := range strings.Split(text.Wrap(content.Printable(strings.TrimRight(l.Text, "\n")), width), "\n") {
			if styled && line != "" {
				line = style.Render(line)
			}
			lines = append(lines, line)
		}
	}
	return lines
}

// Ask asks, and leaves question and answer on the screen.
func (s *Screen) Ask(q page.Prompt) (string, error) {
	if menu, ok := q.Takes.(page.Menu); ok {
		return s.choose(q.Text, menu)
	}
	var reply string
	input := huh.NewInput().Title(text.Wrap(q.Text, s.width()-2)).Prompt("> ").CharLimit(200).Value(&reply)
	if err := s.run(input, nil); err != nil {
		return "", err
	}
	reply = strings.TrimSpace(reply)
	_, err := fmt.Fprintf(s.Out, "%s\n> %s\n\n", text.Wrap(q.Text, s.width()), content.Printable(reply))
	return reply, err
}

// choose lets the learner go up and down the options, or type the number of one to
// go to it. Enter takes it: a digit that did so too would hand the Enter that many
// people type after it to the next question.
func (s *Screen) choose(ask string, q page.Menu) (string, error) {
	options := make([]huh.Option[string], 0, len(q.Options))
	for i, option := range q.Options {
		label := strconv.Itoa(i+1) + ") " + option
		options = append(options, huh.NewOption(shorten(label, s.width()-4), strconv.Itoa(i+1)))
	}
	reply := ""
	field := huh.NewSelect[string]().Title(text.Wrap(ask, s.width()-2)).Options(options...).Value(&reply)
	err := s.run(field, func(k tea.KeyMsg) tea.Msg {
		if n, err := strconv.Atoi(k.String()); err == nil && n >= 1 && n <= len(q.Options) {
			return goTo(n)
		}
		if q.Back && k.Type == tea.KeyEsc {
			return goTo(len(q.Options), tea.KeyEnter)
		}
		return k
	})
	if err != nil {
		return "", err
	}
	shown := reply
	if n, err := strconv.Atoi(reply); err == nil && n >= 1 && n <= len(q.Options) {
		shown += ") " + q.Options[n-1]
	}
	_, err = fmt.Fprintf(s.Out, "%s\n> %s\n\n", text.Wrap(ask, s.width()), text.Wrap(content.Printable(shown), s.width()))
	return reply, err
}

// goTo is the keys that lead to the n-th option, and then some.
func goTo(n int, then ...tea.KeyType) tea.Msg {
	moves := []tea.Cmd{func() tea.Msg { return tea.KeyMsg{Type: tea.KeyHome} }}
	for range n - 1 {
		moves = append(moves, func() tea.Msg { return tea.KeyMsg{Type: tea.KeyDown} })
	}
	for _, key := range then {
		moves = append(moves, func() tea.Msg { return tea.KeyMsg{Type: key} })
	}
	return tea.Sequence(moves...)()
}

// shorten cuts a label that would break over the line; the whole text stands above.
func shorten(label string, width int) string {
	runes := []rune(content.Printable(label))
	if len(runes) <= width {
		return string(runes)
	}
	return string(runes[:max(width-3, 1)]) + "..."
}

// run runs one field as a form of its own. typed, where there is one, may turn a key
// into something else.
func (s *Screen) run(field huh.Field, typed func(tea.KeyMsg) tea.Msg) error {
	if s.Stop.Err() != nil {
		return page.ErrStopped
	}
	keys := huh.NewDefaultKeyMap()
	keys.Quit = key.NewBinding(key.WithKeys("ctrl+c", "esc"))
	keys.Select.Filter = key.NewBinding() // "/" belongs to sizes such as 1/2
	form := huh.NewForm(huh.NewGroup(field)).WithKeyMap(keys).WithTheme(huh.ThemeBase()).WithShowHelp(false).WithWidth(s.width())
	options := []tea.ProgramOption{tea.WithInput(s.In), tea.WithOutput(s.Out)}
	if typed != nil {
		options = append(options, tea.WithFilter(func(_ tea.Model, msg tea.Msg) tea.Msg {
			if k, ok := msg.(tea.KeyMsg); ok {
				return typed(k)
			}
			return msg
		}))
	}
	err := form.WithProgramOptions(options...).Run()
	if errors.Is(err, huh.ErrUserAborted) || errors.Is(err, tea.ErrInterrupted) || errors.Is(err, io.EOF) {
		fmt.Fprintln(s.Out) // the form leaves the cursor on its last line
		return page.ErrStopped
	}
	return err
}
