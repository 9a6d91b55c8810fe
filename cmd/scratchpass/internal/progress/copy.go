package progress

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/record"
)

func copyCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "copy TO",
		Short: "Copy your whole record to another file or to a database",
		Long: `Copies all that is kept of you to another file, or to a database at an address such as
postgres://user@host/name: answers, rehearsals, tests, places in lessons and what they come to,
all of it or nothing. Nothing may be there under your name yet. The record here stays as it is.`,
		Args: cli.OneArgument("a file or the address of a database"),
		RunE: func(cmd *cobra.Command, args []string) error {
			v, err := openToChange(cmd.Context(), r)
			if err != nil {
				return err
			}
			return v.copyTo(r, args[0])
		},
	}
}

func (v view) copyTo(r *cli.Run, to string) (err error) {
	other, err := record.Open(to, v.Record.Learner)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, other.Close()) }()
	if err := v.Record.CopyTo(other); err != nil {
		return err
	}
	_, n, err := other.Summaries()
	if err != nil {
		return err
	}
	if postgres.Is(to) {
		to = postgres.Shown(to)
	}
	fmt.Fprintln(r.Out, v.Session.Say("progress-copied", "n", n, "learner", v.Record.Learner, "to", to))
	return nil
}
