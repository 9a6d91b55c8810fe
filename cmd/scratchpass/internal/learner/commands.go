// Package learner is what one learner does: the home screen, lessons, practice, rounds
// against the clock, and telling the program which lathe they stand at.
package learner

import (
	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// Commands are learn, quiz, drill and lathe. The commands for one problem by itself stand
// below quiz.
func Commands(r *cli.Run, oneProblem ...*cobra.Command) []*cobra.Command {
	quiz := quizCommand(r)
	quiz.AddCommand(oneProblem...)
	return []*cobra.Command{learnCommand(r), quiz, drillCommand(r), latheCommand(r)}
}
