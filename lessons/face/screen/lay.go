package screen

import (
	"math"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"scratchpass/content"
	"scratchpass/lessons/face/sheet"
	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
)

// widest is the longest line that is comfortable to read, and broad a page with a figure
// beside its text.
const (
	widest = 78
	broad  = 100
)

// besideFrom is the width from which a figure stands beside the text, and gutter the room
// between the two.
const (
	besideFrom = 96
	gutter     = 3
)

// layout is how wide lines may be, and how many are seen at once.
type layout struct {
	width, room int
	theme       *theme
}

// Lay lays a page out in lines of at most width columns, in the colours of a look.
func Lay(p page.Page, width int, look Look) []string {
	return layout{width, math.MaxInt, newTheme(look)}.page(p)
}

func (l layout) page(p page.Page) []string {
	var lines []string
	for _, b := range p {
		more := l.block(b)
		if len(more) > 0 && len(lines) > 0 && lines[len(lines)-1] != "" && airBefore(b) {
			lines = append(lines, "")
		}
		lines = append(lines, more...)
	}
	return lines
}

// airBefore tells the blocks that begin something.
func airBefore(b page.Block) bool {
	switch b.(type) {
	case page.Heading, page.Question, page.Verdict, page.Mistake, page.Caution, page.Working, page.Figure, page.Meter, page.Meters, page.Givens:
		return true
	}
	return false
}

func (l layout) block(b page.Block) []string {
	switch b := b.(type) {
	case sheet.Rule:
		return []string{"", l.theme.faint.Render(strings.Repeat("─", min(l.width, widest))), ""}
	case page.Question:
		return l.question(b)
	case page.Givens:
		return givens(b, l.width, l.theme)
	case page.Meter:
		return meter(b, min(l.width, widest), l.theme)
	case page.Meters:
		return meters(b, min(l.width, widest), l.theme)
	case page.Moves:
		return l.moves(b)
	case page.Sight:
		return l.sight(b)
	case page.Figure:
		if len(b.Pictures) > 1 {
			return l.pictures(b)
		}
	case page.Verdict:
		return verdict(b, min(l.width, widest), l.theme)
	case page.Working:
		return working(b, l.width, l.theme)
	}
	return l.words(b, l.width)
}

// words are the lines of a block as every face has them, in a column of text.
func (l layout) words(b page.Block, width int) []string {
	return blockLines(b, min(width, widest), l.theme)
}

// blockLines are the lines of a block as every face has them, in colour.
func blockLines(b page.Block, width int, t *theme) []string {
	var lines []string
	for _, l := range text.Lines(page.Page{b}, width < text.ColumnsFrom-1) {
		switch {
		case l.Drawing != nil:
			lines = append(lines, t.cells(l.Drawing.Cells(min(width, text.WidestPicture)))...)
			continue
		case l.Draw != nil:
			lines = append(lines, l.Draw(width)...)
			continue
		case l.Text == "":
			continue
		}
		lines = append(lines, styled(l, width, t)...)
	}
	return lines
}

// styled wraps a text. A caution has a bar before each line, and its colour to the end.
func styled(l text.Line, width int, t *theme) []string {
	style, has := t.roles[l.Role]
	room := width
	if l.Role == text.Caution {
		room -= 2
	}
	var lines []string
	for _, line := range strings.Split(text.Wrap(content.Printable(strings.TrimRight(l.Text, "\n")), room), "\n") {
		switch {
		case l.Role == text.Caution:
			line = style.Render("▌ " + line + strings.Repeat(" ", max(0, room-lipgloss.Width(line))))
		case has && line != "":
			line = style.Render(line)
		}
		lines = append(lines, line)
	}
	return lines
}

// verdict has a mark, and below it what was given and what is right, side by side.
func verdict(v page.Verdict, width int, t *theme) []string {
	role, mark := text.Bad, "✗ "
	if v.Right {
		role, mark = text.Good, "✓ "
	}
	lines := styled(text.Line{Role: role, Text: mark + v.Text}, width, t)
	given, answer := content.Printable(v.Given), content.Printable(v.Answer)
	switch apart := lipgloss.Width(given) + 4; {
	case given == "" || apart+lipgloss.Width(answer)+2 > width:
		for _, s := range []string{given, answer} {
			if s != "" {
				lines = append(lines, styled(text.Line{Text: s}, width, t)...)
			}
		}
	default:
		lines = append(lines, "  "+given+strings.Repeat(" ", 4)+t.value.Render(answer))
	}
	return lines
}

// working has each step with what its letter means at its right where there is room, else
// below it. The meanings stand below each other if all of them can.
func working(w page.Working, width int, t *theme) []string {
	all := text.Lines(page.Page{w}, false)
	column, means := 0, 0
	for _, l := range all {
		if wide := lipgloss.Width(strings.TrimSpace(l.Text)); l.Role == text.Figures {
			column = max(column, lipgloss.Width(l.Text)+gutter)
		} else {
			means = max(means, wide)
		}
	}
	if column+means > width {
		column = 0
	}
	var lines []string
	for _, l := range all {
		said := content.Printable(l.Text)
		last := len(lines) - 1
		if l.Role == text.Figures || last < 0 {
			lines = append(lines, styled(l, width, t)...)
			continue
		}
		means := strings.TrimSpace(said)
		for _, at := range []int{column, lipgloss.Width(lines[last]) + gutter} {
			if at+lipgloss.Width(means) <= width && at > lipgloss.Width(lines[last]) {
				lines[last] += strings.Repeat(" ", at-lipgloss.Width(lines[last])) + t.faint.Render(means)
				means = ""
				break
			}
		}
		if means != "" {
			lines = append(lines, styled(l, width, t)...)
		}
	}
	return lines
}

// question is a problem with its figure: beside it where there is room, else above it as
// large as leaves the text in view, else only when one asks to look.
func (l layout) question(q page.Question) []string {
	if q.Figure == nil {
		return l.asks(q, l.width)
	}
	figure := q.Figure.Pictures[0]
	if wide := figure.Columns(); l.width >= besideFrom {
		room := l.width - wide - gutter
		return beside(l.asks(q, room), l.theme.cells(figure.Cells(wide)), min(room, widest)+gutter)
	}
	below := l.asks(q, l.width)
	for wide := min(figure.Columns(), l.width); l.width >= text.ColumnsFrom && wide >= leastFigure; wide -= 2 {
		if cells := figure.Cells(wide); len(cells)+1+len(below) <= l.room {
			return append(append(l.theme.cells(cells), ""), below...)
		}
	}
	return below
}

// asks are the words of a question: what is asked in its last line stands out, and what
// there is to choose from stands apart.
func (l layout) asks(q page.Question, width int) []string {
	width = min(width, widest)
	told, asked := q.Parts()
	var lines []string
	if told != "" {
		lines = styled(text.Line{Text: told}, width, l.theme)
	}
	for _, line := range styled(text.Line{Text: asked}, width, l.theme) {
		lines = append(lines, l.theme.key.Render(line))
	}
	if len(q.Lines) == 0 {
		return lines
	}
	if l.room > lowRoom {
		lines = append(lines, "")
	}
	return append(lines, blockLines(page.Question{Lines: q.Lines}, width, l.theme)[1:]...) // without the empty line of no text
}

// lowRoom is how many lines are too few to leave one empty.
const lowRoom = 16

// leastFigure is the least width at which the labels of a figure stand apart.
const leastFigure = 36

// beside puts lines at the right of others, from the same column on.
func beside(left, right []string, column int) []string {
	for len(left) < len(right) {
		left = append(left, "")
	}
	for i, line := range right {
		left[i] += strings.Repeat(" ", max(1, column-ansi.StringWidth(left[i]))) + line
	}
	return left
}

// givens are rows of a table: the name, the letter with its value, set apart.
func givens(all page.Givens, width int, t *theme) []string {
	name := 0
	for _, g := range all {
		name = max(name, lipgloss.Width(content.Printable(g.Label)))
	}
	if name > width-24 {
		return blockLines(all, width, t)
	}
	var lines []string
	for _, g := range all {
		label := content.Printable(g.Label)
		lines = append(lines, "  "+t.faint.Render(label)+strings.Repeat(" ", name-lipgloss.Width(label)+2)+
			t.value.Render(content.Printable(strings.TrimSpace(g.Symbol+" = "+g.Value+" "+g.Unit))))
	}
	return lines
}
