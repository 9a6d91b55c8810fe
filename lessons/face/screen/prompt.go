package screen

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/huh"

	"scratchpass/content"
	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
)

// field is where an answer is made: a line to type on, or a menu to go up and down in. It
// never takes Enter itself: whoever holds it asks for its value then, at once, so that no
// key that follows can still change it.
type field struct {
	takes  page.Takes
	input  *huh.Input
	choice *huh.Select[string]
	typed  *string
	digits string // typed so far of the number of a line
}

func newField(q page.Prompt, width, rows int, t *theme) *field {
	f := &field{takes: q.Takes, typed: new(string)}
	keys, look := huh.NewDefaultKeyMap(), formTheme(t)
	keys.Select.Filter = key.NewBinding() // "/" belongs to sizes such as 1/2
	var it huh.Field
	switch takes := q.Takes.(type) {
	case page.GoOn:
		return f
	case page.Menu:
		options := make([]huh.Option[string], len(takes.Options))
		for i, option := range takes.Options {
			options[i] = huh.NewOption(shorten(strconv.Itoa(i+1)+") "+option, width-4), strconv.Itoa(i+1))
		}
		f.choice = huh.NewSelect[string]().Options(options...)
		if len(options) > rows {
			f.choice.Height(rows)
		}
		it = f.choice
	default:
		f.input = huh.NewInput().Prompt("> ").CharLimit(200).Value(f.typed)
		it = f.input
	}
	it.WithTheme(look).WithKeyMap(keys).WithWidth(width)
	it.Focus()
	return f
}

// formTheme is the look of a field: a bar at its left, and what is chosen in steel.
func formTheme(t *theme) *huh.Theme {
	look := huh.ThemeBase()
	look.Focused.Base = look.Focused.Base.UnsetBorderStyle().UnsetPadding()
	look.Focused.SelectSelector = t.mark.SetString("> ")
	look.Focused.SelectedOption = t.title
	look.Focused.TextInput.Prompt = t.mark
	look.Focused.TextInput.Cursor = t.mark
	return look
}

// key gives a key to the field.
func (f *field) key(k tea.KeyMsg) tea.Cmd {
	switch {
	case f.choice != nil:
		return f.choose(k)
	case f.input != nil:
		_, cmd := f.input.Update(k)
		return cmd
	}
	return nil
}

// choose lets the learner go up and down, or type the number of a line to go to it.
func (f *field) choose(k tea.KeyMsg) tea.Cmd {
	options := f.takes.(page.Menu).Options
	if k.Type == tea.KeyRunes {
		for _, r := range k.Runes {
			f.digit(r, len(options))
		}
		return nil
	}
	f.digits = ""
	_, cmd := f.choice.Update(k)
	return cmd
}

// digit goes to the line whose number has been typed so far.
func (f *field) digit(r rune, lines int) {
	if r < '0' || r > '9' {
		f.digits = ""
		return
	}
	for _, digits := range []string{f.digits + string(r), string(r)} {
		if n, err := strconv.Atoi(digits); err == nil && n >= 1 && n <= lines {
			f.digits = digits
			f.goTo(n)
			return
		}
	}
	f.digits = ""
}

func (f *field) goTo(n int) {
	f.choice.Update(tea.KeyMsg{Type: tea.KeyHome})
	for range n - 1 {
		f.choice.Update(tea.KeyMsg{Type: tea.KeyDown})
	}
}

// value is what stands in the field now.
func (f *field) value() string {
	switch {
	case f.choice != nil:
		line, _ := f.choice.Hovered()
		return line
	case f.input != nil:
		return strings.TrimSpace(*f.typed)
	}
	return ""
}

func (f *field) view() []string {
	switch {
	case f.choice != nil:
		return strings.Split(f.choice.View(), "\n")
	case f.input != nil:
		return strings.Split(f.input.View(), "\n")
	}
	return nil
}

// shorten cuts a label that would break over the line; the whole text stands above.
func shorten(label string, width int) string {
	runes := []rune(content.Printable(label))
	if len(runes) <= width {
		return string(runes)
	}
	return string(runes[:max(width-3, 1)]) + "..."
}

// asked are the lines of what is asked for.
func asked(q page.Prompt, width int) []string {
	if q.Text == "" {
		return nil
	}
	return strings.Split(text.Wrap(content.Printable(q.Text), width), "\n")
}
