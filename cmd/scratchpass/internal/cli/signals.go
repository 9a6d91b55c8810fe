package cli

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"syscall"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
)

// UntilStopped returns a context that ends when someone stops the program: for what
// speaks with someone or writes many files. Someone who stops it again does not want to
// wait for the end of anything: then the program ends at once. Other commands leave signals
// to the system: they are done before anyone could stop them, and to listen would make each
// start slower.
func (r *Run) UntilStopped(ctx context.Context) context.Context {
	asked := make(chan os.Signal, 2)
	signal.Notify(asked, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	leave := r.leaver()
	ctx, stop, done := stoppedBy(ctx, asked, func() { leave(); os.Exit(ExitStopped) })
	r.AtEnd(func() error {
		signal.Stop(asked)
		stop()
		close(done)
		return nil
	})
	return ctx
}

// stoppedBy ends a context when something is asked for, and calls atOnce when it is asked
// for again before done is closed.
func stoppedBy(ctx context.Context, asked <-chan os.Signal, atOnce func()) (_ context.Context, stop func(), done chan struct{}) {
	ctx, stop = context.WithCancel(ctx)
	done = make(chan struct{})
	go func() {
		for again := false; ; again = true {
			select {
			case <-done:
				return
			case <-asked:
			}
			if again {
				atOnce()
				return
			}
			stop()
		}
	}()
	return ctx, stop, done
}

// leaver returns what gives a terminal back as it was found, and with its cursor.
func (r *Run) leaver() func() {
	in, ok := terminalFile(r.In)
	if !ok {
		return func() {}
	}
	state, err := term.GetState(in.Fd())
	return func() {
		if err == nil {
			_ = term.Restore(in.Fd(), state) // the program ends, whatever comes of it
		}
		if out, ok := terminalFile(r.Out); ok {
			fmt.Fprint(out, ansi.ResetModeAltScreenSaveCursor, ansi.ShowCursor)
		}
	}
}
