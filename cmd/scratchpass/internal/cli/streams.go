package cli

import (
	"io"
	"os"

	"github.com/charmbracelet/x/term"
)

// Streams are what a run reads from and writes to.
type Streams struct {
	In       io.Reader
	Out, Err io.Writer
}

// IsTerminal reports whether a stream is a terminal.
func IsTerminal(stream any) bool {
	_, ok := terminalFile(stream)
	return ok
}

// terminalFile returns the file behind a stream when that is a terminal.
func terminalFile(stream any) (*os.File, bool) {
	f, ok := stream.(*os.File)
	return f, ok && term.IsTerminal(f.Fd())
}

// AtTerminal reports whether a person can be spoken with: both ways are a terminal.
func (s Streams) AtTerminal() bool { return IsTerminal(s.In) && IsTerminal(s.Out) }

// The size of a window where there is none.
const (
	usualColumns = 80
	usualRows    = 24
)

// Width is how wide plain text may be.
func (s Streams) Width() int {
	columns, _ := s.size()
	return columns
}

// size is the size of the window, or a usual one where there is none.
func (s Streams) size() (columns, rows int) {
	if out, ok := terminalFile(s.Out); ok {
		if w, h, err := term.GetSize(out.Fd()); err == nil && w > 0 {
			return w, h
		}
	}
	return usualColumns, usualRows
}
