// Package progress looks at a learner's record: what they can do, what stands between
// them and the lathe, and the answers themselves, to take along or to delete.
package progress

import (
	"context"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// Command is progress, with the commands below it.
func Command(r *cli.Run) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "progress",
		Short: "What you can do, what is due, and what keeps going wrong",
		Args:  cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			v, err := open(cmd.Context(), r, false)
			if err != nil {
				return err
			}
			return v.show(cmd.Context(), r)
		},
	}
	cmd.AddCommand(readyCommand(r), whyCommand(r), exportCommand(r), importCommand(r), forgetCommand(r))
	return cmd
}

// Show shows what a record comes to, in a session that is open.
func Show(ctx context.Context, r *cli.Run, s *sitting.Session, rec *record.Record) error {
	v, err := viewOf(s, rec)
	if err != nil {
		return err
	}
	return v.show(ctx, r)
}

func (v view) show(ctx context.Context, r *cli.Run) error {
	p, err := progress.Of(v.record, v.items, v.special, r.Now())
	if err != nil {
		return err
	}
	if r.JSON {
		return r.PrintJSON(p)
	}
	return r.ShowPage(ctx, p.Page(v.speaker()))
}
