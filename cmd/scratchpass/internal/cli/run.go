// Package cli is what every command of the program shares: the streams of one run, the
// options that mean the same everywhere, what a session needs opened, how something is
// printed, and the exit codes.
package cli

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"
)

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

// UntilStopped returns a context that ends when someone stops the program: for what
// speaks with someone or writes many files. Other commands leave signals to the system:
// they are done before anyone could stop them, and to listen would make each start slower.
func (r *Run) UntilStopped(ctx context.Context) context.Context {
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	r.AtEnd(func() error { stop(); return nil })
	return ctx
}
