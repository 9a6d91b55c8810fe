package cli

import (
	"github.com/spf13/cobra"

	"scratchpass/quiz/problem"
)

// Level is the option --level.
type Level struct{ n int }

// AddTo adds --level to a command.
func (l *Level) AddTo(cmd *cobra.Command) {
	cmd.Flags().IntVar(&l.n, "level", 1, "1 numbers given, 2 one thing to find first, 3 as on the job")
}

// Read returns the level that was given.
func (l Level) Read() (problem.Level, error) {
	if l.n < 1 || l.n > 3 {
		return 0, Usagef("--level %d: give 1, 2 or 3", l.n)
	}
	return problem.Level(l.n), nil
}
