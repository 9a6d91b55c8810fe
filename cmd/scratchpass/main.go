// Command scratchpass teaches and asks the numbers and decisions of single-point
// threading on a manual lathe.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"

	"scratchpass/lessons/quiet"
)

func main() {
	quiet.Restore() // before anything looks at TERM
	stop, cancel := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer cancel()
	os.Exit(run(stop, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
