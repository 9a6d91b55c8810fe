// Package lookup is what can be looked up without an exercise: one thread, a word, where
// figures come from, the cautions, what is wrong with lessons and wording, and what the
// program is built from.
package lookup

import (
	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// Commands are thread, terms, sources, safety, content and notices.
func Commands(r *cli.Run) []*cobra.Command {
	return []*cobra.Command{threadCommand(r), termsCommand(r), sourcesCommand(r), safetyCommand(r), contentCommand(r), noticesCommand(r)}
}
