// Package codefile is the file in which an instructor hands out questions for the
// screen: problem codes, one a line.
package codefile

import (
	"fmt"
	"io"
	"strings"

	"scratchpass/content"
	"scratchpass/quiz/problem"
)

// Questions are what such a file holds.
type Questions struct {
	Codes []string // of their problems, in their order
	Sure  bool     // each question asks how sure someone is
}

// comment begins a line that is no code.
const comment = "#"

// sureLine is the line that has each question ask how sure someone is.
const sureLine = comment + " each question asks how sure you are"

// Write writes questions below a title. A title can only be a title, whatever it has in it,
// and what is no problem code is an error.
func Write(w io.Writer, title string, q Questions) error {
	for _, code := range q.Codes {
		if _, err := problem.ParseCode(code); err != nil {
			return fmt.Errorf("a file of codes: %w", err)
		}
	}
	lines := []string{comment + " " + content.OneLine(title)}
	if strings.TrimSpace(lines[0]) == sureLine {
		lines[0] += "."
	}
	if q.Sure {
		lines = append(lines, sureLine)
	}
	_, err := fmt.Fprintln(w, strings.Join(append(lines, q.Codes...), "\n"))
	return err
}

// Parse reads questions from the text of a file; its name stands in front of what is
// wrong. Lines may be empty or comments, as someone who edits the file leaves them.
func Parse(name string, text []byte) (q Questions, err error) {
	for i, line := range strings.Split(strings.TrimPrefix(string(text), "\ufeff"), "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, comment) {
			q.Sure = q.Sure || line == sureLine
			continue
		}
		if _, err := problem.ParseCode(line); err != nil {
			return q, fmt.Errorf("%s, line %d: %w", name, i+1, err)
		}
		q.Codes = append(q.Codes, line)
	}
	return q, nil
}
