package screen

import (
	"strings"

	"github.com/charmbracelet/lipgloss"

	"scratchpass/content"
	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
)

// The bars of a sheet: as wide as the room allows up to here, and among others in a list.
const (
	widestBar = 48
	listedBar = 20
)

// bar draws a meter: full for what is done, half for what is begun. Something done or
// begun shows, however little it is.
func bar(m page.Meter, width int, t *theme) string {
	of := max(m.Of, 1)
	at := func(n int) int {
		letters := min(n*width/of, width)
		if n > 0 {
			letters = max(letters, 1)
		}
		return letters
	}
	done := at(m.Done)
	begun := max(at(m.Done+m.Begun)-done, 0)
	return t.mark.Render(strings.Repeat("█", done)+strings.Repeat("▒", begun)) + t.faint.Render(strings.Repeat("░", width-done-begun))
}

// meter is a bar with what it says below it.
func meter(m page.Meter, width int, t *theme) []string {
	return append([]string{bar(m, min(width, widestBar), t)}, styled(text.Line{Text: m.Text}, width, t)...)
}

// meters are rows of a name, a bar and what it says, in columns where there is room for
// all three.
func meters(all page.Meters, width int, t *theme) []string {
	name, said := 0, 0
	for _, m := range all {
		name = max(name, lipgloss.Width(content.Printable(m.Name))+1)
		said = max(said, lipgloss.Width(content.Printable(m.Text)))
	}
	if name+said+listedBar+4 > width {
		return blockLines(all, width, t)
	}
	var lines []string
	for _, m := range all {
		label := content.Printable(m.Name) + ":"
		lines = append(lines, label+strings.Repeat(" ", name-lipgloss.Width(label)+2)+bar(m.Meter, listedBar, t)+"  "+content.Printable(m.Text))
	}
	return lines
}
