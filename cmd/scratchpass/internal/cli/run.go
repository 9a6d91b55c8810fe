// Package cli is what every command of the program shares: the streams of one run, the
// options that mean the same everywhere, what a session needs opened, how something is
// printed, and the exit codes.
package cli

import "io"

// Run is one run of the program.
type Run struct {
	Streams
	Options

	closers []func() error
}

// New returns a run on these streams; AddTo gives it its options.
func New(in io.Reader, out, errOut io.Writer) *Run {
	return &Run{Streams: Streams{In: in, Out: out, Err: errOut}}
}

// AtEnd lets something be closed when the run ends, whatever came of it; what was opened
// last is closed first.
func (r *Run) AtEnd(end func() error) { r.closers = append(r.closers, end) }
