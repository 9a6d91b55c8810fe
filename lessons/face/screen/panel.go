package screen

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"scratchpass/content"
	"scratchpass/lessons/page"
)

// pinned are the lines of a bench that stay where they are: the panel, and under the log
// the moves that can be made.
type pinned struct{ over, under []string }

// Measures of the panel. Its parts have the same room whatever they show, so that nothing
// moves.
const (
	panelLog   = 6  // lines of the log that are seen at least
	panelAsk   = 3  // lines that a question below it takes
	bigDial    = 26 // columns of a dial
	dialRows   = 11
	bigWork    = 38 // and of the groove
	smallWork  = 28
	workRows   = 9
	smallFrom  = 62 // columns from which there is room for a groove beside the signs
	mostOffers = 5  // lines of moves
)

// pin lays out what stays in its place.
func (m *model) pin() {
	m.pinned = pinned{}
	b := m.sheet.Panel
	if b == nil {
		return
	}
	l := layout{m.wide(), 0, m.theme}
	room := m.rows - m.frame() - panelLog - panelAsk - 1
	m.pinned.over = append(l.panel(*b, room), m.theme.faint.Render(strings.Repeat("─", m.wide())))
	if spare := room - len(m.pinned.over) + 1; spare >= mostOffers {
		m.pinned.under = l.moves(b.Moves)
	}
}

// panel is as much of a bench as there is room for: dials and groove large, a small groove
// beside what the dials read, or words alone.
func (l layout) panel(b page.Bench, room int) []string {
	all := append([]page.Sign{}, b.Signs...)
	for _, d := range b.Dials {
		all = append(all, d.Sign)
	}
	pairs := (len(b.Signs) + 1) / 2
	switch {
	case l.width >= besideFrom && room >= pairs+1+dialRows:
		return l.largePanel(b, pairs+1+dialRows)
	case l.width >= smallFrom && room >= workRows:
		left := l.signs(all, l.width-smallWork-gutter, 1)
		return l.withWork(left, b, smallWork, max(workRows, len(all)))
	case room >= len(all):
		return l.signs(all, l.width, 1)
	}
	return l.signs(all, l.width, 2)
}

// largePanel has the dials side by side below the signs, and the groove at their right.
func (l layout) largePanel(b page.Bench, rows int) []string {
	signs := l.signs(b.Signs, l.width, 2)
	var names string
	var faces []string
	for i, d := range b.Dials {
		column := i * (bigDial + gutter)
		names += strings.Repeat(" ", max(0, column-ansi.StringWidth(names))) + "  " + l.sign(d.Sign, 0, bigDial)
		faces = beside(faces, l.theme.cells(d.Face.Cells(bigDial)), column)
	}
	return append(signs, l.withWork(append([]string{names}, faces...), b, bigWork, rows-len(signs))...)
}

// withWork puts the groove at the right of other lines, so many rows high.
func (l layout) withWork(left []string, b page.Bench, wide, rows int) []string {
	if b.Work != nil {
		left = beside(left, l.theme.cells(b.Work.Cells(wide)), l.width-wide)
	}
	for len(left) < rows {
		left = append(left, "")
	}
	return left[:rows]
}

// signs are what can be seen, so many in a row, the names below each other.
func (l layout) signs(all []page.Sign, wide, across int) []string {
	wide = (wide - gutter*(across-1)) / across
	name := make([]int, across)
	for i, s := range all {
		name[i%across] = max(name[i%across], lipgloss.Width(s.Name))
	}
	var lines []string
	for i, s := range all {
		text := l.sign(s, name[i%across], wide)
		if i%across == 0 {
			lines = append(lines, text)
			continue
		}
		last := &lines[len(lines)-1]
		*last += strings.Repeat(" ", max(1, (wide+gutter)*(i%across)-ansi.StringWidth(*last))) + text
	}
	return lines
}

// sign is a name in so many columns, and what is read there.
func (l layout) sign(s page.Sign, name, wide int) string {
	label := content.Printable(s.Name)
	label += strings.Repeat(" ", max(0, name-lipgloss.Width(label))+2)
	return l.theme.faint.Render(label) + l.theme.value.Render(shorten(s.Reads, max(4, wide-lipgloss.Width(label))))
}

// moves are numbered, in as many columns as there is room for.
func (l layout) moves(all page.Moves) []string {
	labels, wide := make([]string, len(all)), 1
	for i, m := range all {
		labels[i] = strconv.Itoa(i+1) + ") " + content.Printable(m)
		wide = max(wide, lipgloss.Width(labels[i])+2)
	}
	across := max(1, l.width/wide)
	lines := make([]string, (len(labels)+across-1)/across)
	for i, label := range labels {
		lines[i/across] += label + strings.Repeat(" ", wide-lipgloss.Width(label))
	}
	for i, line := range lines {
		lines[i] = l.theme.faint.Render(strings.TrimRight(line, " "))
	}
	return lines
}

// offered are the moves of a panel that have come anew and have no place of their own: the
// log shows them until the next move.
func (m *model) offered() []string {
	if b := m.sheet.Panel; b != nil && b.Head != "" && len(m.pinned.under) == 0 {
		return append([]string{m.theme.faint.Render(b.Head)}, layout{m.wide(), 0, m.theme}.moves(b.Moves)...)
	}
	return nil
}
