package text

import (
	"strings"

	"github.com/muesli/reflow/wordwrap"
)

// NarrowestWidth is the least width that text is laid out for.
const NarrowestWidth = 30

// Wrap breaks text at spaces only, so that no number and no sign is torn from its
// neighbour. Lines that the text already has stay; a line that begins with spaces
// keeps them on the lines it is broken into.
func Wrap(text string, width int) string {
	width = max(width, NarrowestWidth)
	var out []string
	for _, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		body := strings.TrimLeft(line, " ")
		indent := strings.Repeat(" ", min(len(line)-len(body), width/2))
		if item := listItem(body); item > 0 { // hang the lines of a list item under its text
			first, rest := body[:item], wrapLine(body[item:], width-len(indent)-item)
			for i, part := range rest {
				lead := first
				if i > 0 {
					lead = strings.Repeat(" ", item)
				}
				out = append(out, indent+lead+part)
			}
			continue
		}
		for _, part := range wrapLine(body, width-len(indent)) {
			out = append(out, indent+part)
		}
	}
	return strings.Join(out, "\n")
}

// listItem returns how wide the mark of a list item is: "1) " or "- ", or 0.
func listItem(line string) int {
	for i, r := range line {
		switch {
		case r >= '0' && r <= '9':
		case (r == ')' && i > 0 && i < 4 || r == '-' && i == 0) && strings.HasPrefix(line[i+1:], " "):
			return i + 2
		default:
			return 0
		}
	}
	return 0
}

func wrapLine(line string, width int) []string {
	w := wordwrap.NewWriter(max(width, 10))
	w.Breakpoints = nil          // a hyphen is part of a thread's name, a comma of a number
	_, _ = w.Write([]byte(line)) // it writes to memory: no error
	_ = w.Close()
	return strings.Split(w.String(), "\n")
}
