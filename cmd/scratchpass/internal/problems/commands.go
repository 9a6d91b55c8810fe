// Package problems is one problem by itself: asked, marked, or worked with someone's own
// numbers. No one is spoken with and nothing is kept.
package problems

import (
	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// AskAndMark are the commands that stand below quiz.
func AskAndMark(r *cli.Run) []*cobra.Command {
	return []*cobra.Command{askCommand(r), markCommand(r)}
}
