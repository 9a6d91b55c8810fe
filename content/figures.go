package content

import (
	"errors"
	"fmt"
	"strings"
)

// FillFigures puts figures into the text of a lesson: each ${...} is replaced by what
// figure gives for the words inside. What has no figure stays as it stands, and the error
// tells all of it at once.
func FillFigures(text string, figure func(asked string) (string, error)) (string, error) {
	var b strings.Builder
	var wrong []error
	for text != "" {
		before, rest, found := strings.Cut(text, "${")
		b.WriteString(before)
		if !found {
			break
		}
		asked, behind, closed := strings.Cut(rest, "}")
		if !closed || strings.Contains(asked, "\n") { // one that is closed only lines below is a slip of the pen
			line, _, _ := strings.Cut(rest, "\n")
			wrong = append(wrong, fmt.Errorf("%q is not closed: write } behind the name, on the same line", "${"+shortened(line)))
			b.WriteString("${")
			text = rest
			continue
		}
		filled, err := figure(asked)
		if err != nil {
			wrong = append(wrong, err)
			filled = "${" + asked + "}"
		}
		b.WriteString(filled)
		text = behind
	}
	return b.String(), errors.Join(wrong...)
}

// figures looks at what the texts of a lesson ask for in ${...}.
func (c *checker) figures(file string, source []byte, at func(string) int, l Lesson) {
	for _, text := range append([]string{l.Title, l.Why}, l.Goals...) {
		if strings.Contains(text, "${") {
			c.say(file, at(text), "${...} is filled in only in the texts of the parts; write the number itself here")
		}
	}
	if c.known.Figure == nil {
		return
	}
	before := len(c.found)
	for _, p := range l.Parts {
		for _, b := range p.Explain {
			from := at(b.Text)
			for line := range strings.Lines(b.Text) {
				if len(c.found)-before >= mostFindings { // each is looked for in the whole file
					return
				}
				if _, err := FillFigures(line, c.known.Figure); err != nil {
					c.say(file, lineOf(source, strings.TrimSpace(line), from), "%s", strings.ReplaceAll(err.Error(), "\n", "; "))
				}
			}
		}
	}
}

// lineOf is the line of a file on which a text stands, looked for from a line on; that
// line where it is nowhere so written.
func lineOf(source []byte, text string, from int) int {
	for i, line := range strings.Split(string(source), "\n") {
		if i+1 >= from && strings.Contains(line, text) {
			return i + 1
		}
	}
	return from
}
