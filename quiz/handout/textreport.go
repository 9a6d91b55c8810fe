package handout

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

func (t *text) report(r Report) error {
	t.begin()
	t.say(0, r.Title)
	for _, fact := range r.Facts {
		t.say(0, fact)
	}
	for _, part := range r.Parts {
		t.gap()
		if part.Heading != "" {
			t.say(0, part.Heading)
		}
		for _, line := range part.Lines {
			t.say(0, line)
		}
		if part.Table != nil {
			t.table(part.Table)
		}
		if d := part.Drawing; d != nil {
			if part.Table != nil {
				t.gap()
			}
			t.field(d.Title, d.Twin)
		}
	}
	t.gap()
	for _, line := range []string{r.Note, r.Owner} {
		if line != "" {
			t.say(0, line)
		}
	}
	return t.out.Flush()
}

// columnGapText is between two columns of plain text.
const columnGapText = 2

// table lays rows out in columns. Only the names of columns are broken, never a cell:
// a table that has no room for that is told row by row.
func (t *text) table(table *Table) {
	spans := make([]span, len(table.Columns))
	for i, name := range table.Columns {
		whole := 0
		for _, piece := range pieces(name) {
			whole = max(whole, ansi.StringWidth(piece))
		}
		for _, cells := range table.Rows {
			whole = max(whole, ansi.StringWidth(cells[i]))
		}
		spans[i] = span{whole, whole, ansi.StringWidth(name)}
	}
	widths, ok := shared(spans, textWidth-columnGapText*(len(spans)-1))
	if !ok {
		for i, lines := range table.records() {
			if i > 0 {
				t.gap()
			}
			for _, line := range lines {
				t.say(2, line)
			}
		}
		return
	}
	numbers := table.Numbers()
	if table.Named() {
		t.aligned(table.Columns, widths, numbers)
	}
	for _, cells := range table.Rows {
		t.aligned(cells, widths, numbers)
	}
}

// aligned writes cells side by side, their last lines level.
func (t *text) aligned(cells []string, widths []int, right []bool) {
	high := 0
	lines := make([][]string, len(cells))
	for i, cell := range cells {
		lines[i] = wrap(cell, widths[i], ansi.StringWidth)
		high = max(high, len(lines[i]))
	}
	for n := range high {
		var b strings.Builder
		for i, of := range lines {
			line := ""
			if skip := high - len(of); n >= skip {
				line = of[n-skip]
			}
			pad := strings.Repeat(" ", max(widths[i]-ansi.StringWidth(line), 0))
			if right[i] {
				line = pad + line
			} else {
				line += pad
			}
			if i > 0 {
				line = strings.Repeat(" ", columnGapText) + line
			}
			b.WriteString(line)
		}
		_, _ = t.out.WriteString(strings.TrimRight(b.String(), " ") + "\n")
	}
}
