// Package desk is an instructor's: sheets and keys for a class, marking what comes back,
// and what the class got wrong.
package desk

import (
	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// Command is set, with the commands below it.
func Command(r *cli.Run) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "set",
		Short: "An instructor's problem sets: sheets, keys, marking, what the class got wrong",
		Args:  cli.NoArguments,
		RunE:  func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.AddCommand(makeCommand(r), keyCommand(r), markCommand(r), reportCommand(r), newCommand(r), previewCommand(r), exampleCommand(r))
	return cmd
}

// classFlags are what finds a class's numbers again.
type classFlags struct {
	roster string
	forms  int
	secret string
}

func (f *classFlags) addTo(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.roster, "roster", "", "`FILE` with the apprentices: a CSV with id and name, or the users.csv of OneRoster")
	cmd.Flags().IntVar(&f.forms, "forms", 0, "so many lettered forms instead of a roster")
	cmd.Flags().StringVar(&f.secret, "secret", "", "`FILE` with the class secret (default: one in your configuration folder)")
}

// outFlags are where files go, and in which formats.
type outFlags struct {
	dir     string
	formats string
	replace bool
}

func (f *outFlags) addTo(cmd *cobra.Command, formats string) {
	cmd.Flags().StringVar(&f.dir, "out", "", "`DIR` for the files (default: named after the set)")
	cmd.Flags().BoolVar(&f.replace, "replace", false, "write files anew that are there already")
	cmd.Flags().StringVar(&f.formats, "format", "pdf", formats)
}

// answersFlag is where the answers are that came back.
type answersFlag struct {
	paths []string
	code  string
}

func (f *answersFlag) addTo(cmd *cobra.Command) {
	cmd.Flags().StringArrayVar(&f.paths, "answers", nil, "`FILE` of answers, or postgres://...; may be given more than once")
	cmd.Flags().StringVar(&f.code, "code", "", "`CODE` of the class whose answers they are (default: of a file, its last class)")
}

// decisionsFlag is where an instructor's decisions are.
type decisionsFlag string

func (f *decisionsFlag) addTo(cmd *cobra.Command) {
	cmd.Flags().StringVar((*string)(f), "decisions", "", "`FILE` of your decisions: code, item, points, reason (default: decisions.csv beside the marks)")
}
