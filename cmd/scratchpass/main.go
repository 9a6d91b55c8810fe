// Command scratchpass teaches and asks the numbers and decisions of single-point
// threading on a manual lathe.
package main

import (
	"context"
	"io"
	"os"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/face/quiet"
)

func main() {
	quiet.Restore() // before anything looks at TERM
	os.Exit(run(context.Background(), os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run runs the program and returns its exit code. It stops when the context ends.
func run(ctx context.Context, args []string, in io.Reader, out, errOut io.Writer) int {
	r := cli.New(in, out, errOut)
	args = cli.NegativesAsArguments(args)
	root := rootCommand(r, args)
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errOut)
	return r.End(root.ExecuteContext(ctx))
}
