package screen

import (
	"strings"
	"time"

	"github.com/charmbracelet/lipgloss"

	"scratchpass/content"
	"scratchpass/lessons/page"
)

// meterWide is how many letters the meter at the top has.
const meterWide = 12

// header is the top of the frame: the program and what this is, and where one is in it.
func (m *model) header() []string {
	if m.time.says != nil {
		return m.headed(m.sheet.Title, m.time.left(time.Now()))
	}
	return m.headed(m.sheet.Title, m.sheet.Where)
}

func (m *model) headed(title string, where page.Where) []string {
	left := m.theme.title.Render(m.words.Name)
	room := m.columns - lipgloss.Width(left) - 3
	right := m.whereabouts(where, room)
	if title = content.Printable(title); title != "" && room-lipgloss.Width(right) > 12 {
		left += m.theme.faint.Render(" · ") + shorten(title, max(4, room-lipgloss.Width(right)-6))
	}
	line := " " + left + strings.Repeat(" ", max(1, m.columns-2-lipgloss.Width(left)-lipgloss.Width(right))) + right
	if !m.framed() {
		return []string{line}
	}
	return []string{line, m.across()}
}

// whereabouts is where one is, with a meter if there is room for both.
func (m *model) whereabouts(w page.Where, room int) string {
	text := m.theme.faint.Render(shorten(w.Text, room))
	if w.Of > 0 && lipgloss.Width(text)+meterWide+2 <= room/2 {
		done := min(w.Done*meterWide/w.Of, meterWide)
		text += "  " + m.theme.mark.Render(strings.Repeat("█", done)) + m.theme.faint.Render(strings.Repeat("░", meterWide-done))
	}
	return text
}

func (m *model) across() string {
	return m.theme.faint.Render(strings.Repeat("─", max(0, m.columns)))
}

// footer is the foot of the frame: the keys that work now.
func (m *model) footer() []string {
	keys := []string{content.Printable(m.said)}
	if m.asked != nil {
		keys = m.keys()
	}
	return m.footed(strings.Join(keys, " · "))
}

func (m *model) footed(keys string) []string {
	line := " " + m.theme.faint.Render(shorten(keys, m.columns-2))
	if !m.framed() {
		return []string{line}
	}
	return []string{m.across(), line}
}

func (m *model) keys() []string {
	var keys []string
	if m.more() {
		return []string{m.words.More}
	}
	switch takes := m.now.Takes.(type) {
	case page.GoOn:
		keys = append(keys, m.words.GoOn)
	case page.Menu:
		keys = append(keys, m.words.Menu)
		if takes.Back {
			keys = append(keys, m.words.Back)
		}
	case page.Words:
		keys = append(keys, m.doing(takes)...)
	default:
		keys = append(append(keys, m.words.Answer), m.now.Words...)
		if m.now.Beside {
			keys = append(keys, m.words.Beside...)
		}
	}
	return keys
}

// doing are the keys of a line on which any words are typed.
func (m *model) doing(takes page.Words) []string {
	keys := []string{m.words.Answer}
	if takes.Moves {
		keys[0] = m.words.Do
	}
	if takes.Back != "" {
		keys = append(keys, m.words.Back)
	}
	return append(keys, m.now.Words...)
}
