package cli

import (
	"errors"
	"fmt"
	"io"
	"slices"

	"scratchpass/content"
	"scratchpass/lessons/page"
)

// The exit codes.
const (
	ExitDone    = 0
	ExitFailed  = 1
	ExitUsage   = 2
	ExitStopped = 130
)

// usageError is an error in how the program was called.
type usageError struct{ error }

func (e usageError) Unwrap() error { return e.error }

// UsageError makes an error one in how the program was called.
func UsageError(err error) error { return usageError{err} }

// Usagef is fmt.Errorf for an error in how the program was called.
func Usagef(format string, args ...any) error { return usageError{fmt.Errorf(format, args...)} }

// End closes what the run has opened, says what went wrong and returns the exit code.
func (r *Run) End(err error) int {
	for _, end := range slices.Backward(r.closers) {
		if e := end(); err == nil {
			err = e
		}
	}
	if errors.Is(err, page.ErrStopped) {
		var stopped page.Stopped
		if errors.As(err, &stopped) {
			fmt.Fprintln(r.Out, stopped.Farewell)
		}
		return ExitStopped
	}
	return report(r.Err, err)
}

// report says what went wrong, if anything, and returns the exit code of it.
func report(to io.Writer, err error) int {
	if err == nil {
		return ExitDone
	}
	fmt.Fprintln(to, "scratchpass:", content.Printable(err.Error()))
	if bad := (usageError{}); errors.As(err, &bad) {
		return ExitUsage
	}
	return ExitFailed
}
