// Package plain is the face for pipes, screen readers and dumb terminals: text from top
// to bottom, nothing drawn again, no pictures, no colour.
package plain

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"scratchpass/content"
	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
)

// face writes plain text. One reader serves the whole run, so that piped answers are
// never lost between two questions.
type face struct {
	stop context.Context
	in   *bufio.Reader
	out  io.Writer
	Options
}

// Options are how plain text is laid out.
type Options struct {
	Width   int  // of lines; 0 leaves them unwrapped
	Echo    bool // print what was read: the input is no keyboard
	Columns bool // figures may stand in columns; without it each row is a sentence
}

// longestLine is the most of one line that is kept; the rest is read and dropped.
const longestLine = 4096

// New returns the plain face. It stops asking when the context ends.
func New(stop context.Context, in io.Reader, out io.Writer, o Options) page.Face {
	return &face{stop: stop, in: bufio.NewReader(in), out: out, Options: o}
}

func (f *face) Show(p page.Page) error {
	for _, l := range text.Lines(p, !f.Columns || f.Width > 0 && f.Width < text.ColumnsFrom) {
		if l.Role == text.Picture || l.Text == "" {
			continue
		}
		said := strings.TrimRight(content.Printable(l.Text), "\n")
		if f.Width > 0 {
			said = text.Wrap(said, f.Width)
		}
		if _, err := fmt.Fprintln(f.out, said); err != nil {
			return err
		}
	}
	_, err := fmt.Fprintln(f.out)
	return err
}

func (f *face) Ask(q page.Prompt) (string, error) {
	for i, option := range q.Options() {
		if _, err := fmt.Fprintf(f.out, "%d) %s\n", i+1, content.Printable(option)); err != nil {
			return "", err
		}
	}
	if _, err := fmt.Fprintf(f.out, "%s > ", q.Text); err != nil {
		return "", err
	}
	line, err := f.await()
	if err != nil {
		fmt.Fprintln(f.out)
		return "", err
	}
	if f.Echo {
		fmt.Fprintln(f.out, content.Printable(line))
	}
	return line, nil
}

// await reads a line, but not longer than the context lasts. The reader that is left
// waiting then is never used again: the program is about to end.
func (f *face) await() (string, error) {
	type result struct {
		line string
		err  error
	}
	got := make(chan result, 1)
	go func() {
		line, err := f.readLine()
		got <- result{line, err}
	}()
	select {
	case r := <-got:
		return r.line, r.err
	case <-f.stop.Done():
		return "", page.ErrStopped
	}
}

// readLine reads one line. The end of the input is a stop, also in the middle of a
// line that no one finished: half an answer is not an answer.
func (f *face) readLine() (string, error) {
	var line []byte
	for {
		part, err := f.in.ReadSlice('\n')
		if room := longestLine - len(line); room > 0 {
			line = append(line, part[:min(len(part), room)]...)
		}
		switch {
		case err == nil:
			return strings.TrimSpace(string(line)), nil
		case errors.Is(err, bufio.ErrBufferFull):
			continue
		case errors.Is(err, io.EOF):
			return "", page.ErrStopped
		}
		return "", err
	}
}
