// Package quiet keeps the terminal library from asking the terminal for its
// background colour while the program is still being initialised: the question goes
// out even for --version, and an answer that does not come costs seconds.
//
// The library leaves a terminal alone whose TERM is dumb. This package sets that
// when it is initialised, which must be before the library is: it imports nothing
// but os, so it comes first. main calls Restore before anything else.
package quiet

import "os"

var (
	term string
	was  bool
)

func init() {
	term, was = os.LookupEnv("TERM")
	os.Setenv("TERM", "dumb")
}

// Restore puts TERM back.
func Restore() {
	if was {
		os.Setenv("TERM", term)
		return
	}
	os.Unsetenv("TERM")
}
