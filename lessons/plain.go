package lessons

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"scratchpass/content"
)

// plainTerminal is for pipes, screen readers and dumb terminals: text from top to
// bottom, nothing drawn again, no pictures, no colour. One reader serves the whole
// run, so that piped answers are never lost between two questions.
type plainTerminal struct {
	stop  context.Context
	in    *bufio.Reader
	out   io.Writer
	width int
	echo  bool // the input is not a keyboard: print what was read
}

// longestLine is the most of one line that is kept; the rest is read and dropped.
const longestLine = 4096

// NewPlain returns the plain terminal. It stops asking when the context ends. width 0
// leaves lines unwrapped; echo prints what was read, for input that is no keyboard.
func NewPlain(stop context.Context, in io.Reader, out io.Writer, width int, echo bool) Terminal {
	return &plainTerminal{stop: stop, in: bufio.NewReader(in), out: out, width: width, echo: echo}
}

func (p *plainTerminal) Show(t Text) error {
	for _, b := range t {
		if b.Style == Picture || b.Text == "" {
			continue
		}
		text := strings.TrimRight(content.Printable(b.Text), "\n")
		if p.width > 0 {
			text = Wrap(text, p.width)
		}
		if _, err := fmt.Fprintln(p.out, text); err != nil {
			return err
		}
	}
	_, err := fmt.Fprintln(p.out)
	return err
}

func (p *plainTerminal) Ask(q Question) (string, error) {
	if _, err := fmt.Fprintf(p.out, "%s > ", q.Prompt); err != nil {
		return "", err
	}
	line, err := p.await()
	if err != nil {
		fmt.Fprintln(p.out)
		return "", err
	}
	if p.echo {
		fmt.Fprintln(p.out, content.Printable(line))
	}
	return line, nil
}

func (p *plainTerminal) Choose(q Question) (string, error) {
	for i, option := range q.Options {
		if _, err := fmt.Fprintf(p.out, "%d) %s\n", i+1, content.Printable(option)); err != nil {
			return "", err
		}
	}
	return p.Ask(q)
}

// await reads a line, but not longer than the context lasts. The reader that is left
// waiting then is never used again: the program is about to end.
func (p *plainTerminal) await() (string, error) {
	type result struct {
		line string
		err  error
	}
	got := make(chan result, 1)
	go func() {
		line, err := p.readLine()
		got <- result{line, err}
	}()
	select {
	case r := <-got:
		return r.line, r.err
	case <-p.stop.Done():
		return "", ErrStopped
	}
}

// readLine reads one line. The end of the input is a stop, also in the middle of a
// line that no one finished: half an answer is not an answer.
func (p *plainTerminal) readLine() (string, error) {
	var line []byte
	for {
		part, err := p.in.ReadSlice('\n')
		if room := longestLine - len(line); room > 0 {
			line = append(line, part[:min(len(part), room)]...)
		}
		switch {
		case err == nil:
			return strings.TrimSpace(string(line)), nil
		case errors.Is(err, bufio.ErrBufferFull):
			continue
		case errors.Is(err, io.EOF):
			return "", ErrStopped
		}
		return "", err
	}
}
