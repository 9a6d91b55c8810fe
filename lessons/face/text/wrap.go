package text

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
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

// heldHyphen stands for a hyphen while a line is broken: the library breaks at every
// hyphen, and here one is part of a thread's name or the sign of a number.
const heldHyphen = "\ue000" // for private use, one column wide: in nobody's text

func wrapLine(line string, width int) []string {
	held := strings.ReplaceAll(line, "-", heldHyphen)
	broken := ansi.Wordwrap(held, max(width, 10), "") // no breakpoints: a comma is part of a number
	return strings.Split(strings.ReplaceAll(broken, heldHyphen, "-"), "\n")
}
