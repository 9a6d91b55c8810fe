package screen

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"scratchpass/content"
	"scratchpass/lessons/page"
)

// View draws the screen.
func (m *model) View() string {
	if m.columns == 0 {
		return ""
	}
	if m.picture != nil {
		return m.picture.view(m)
	}
	top := m.header()
	var middle []string
	foot := m.footer()
	if m.asked != nil {
		middle = append(append(middle, m.pinned.over...), m.text[min(m.from, len(m.text)):min(m.from+m.room(), len(m.text))]...)
		below := append(slices.Clone(m.pinned.under), m.prompted()...)
		for m.sheet.Panel != nil && len(middle) < m.rows-len(top)-len(foot)-len(below) {
			middle = append(middle, "")
		}
		middle = append(middle, below...)
	}
	for len(middle) < m.rows-len(top)-len(foot) {
		middle = append(middle, "")
	}
	middle = middle[:max(0, m.rows-len(top)-len(foot))]
	left := strings.Repeat(" ", m.margin())
	for i, line := range middle {
		if line != "" {
			middle[i] = ansi.Truncate(left+line, m.columns, "")
		}
	}
	return strings.Join(append(append(top, middle...), foot...), "\n")
}

// prompted are the lines of what is asked, and the field.
func (m *model) prompted() []string {
	var lines []string
	if _, ok := m.now.Takes.(page.GoOn); !ok {
		lines = append(lines, "")
	}
	for _, line := range asked(m.now, min(m.wide(), widest)) {
		lines = append(lines, m.theme.key.Render(content.Printable(line)))
	}
	return append(lines, m.field.view()...)
}
