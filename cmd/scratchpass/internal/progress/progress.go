// Package progress looks at a learner's record: what they can do, what stands between
// them and the lathe, and the answers themselves, to take along or to delete.
package progress

import (
	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/page"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// Command is progress, with the commands below it.
func Command(r *cli.Run) *cobra.Command {
	var all bool
	cmd := &cobra.Command{
		Use:   "progress [JOB]",
		Short: "What you can do, what is due, and what keeps going wrong",
		Long: `What you can do, what is due, and what keeps going wrong. With JOB, the name of a job
that you rehearsed: how often, with how many mistakes, and which of them came back.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			v, err := open(cmd.Context(), r, false)
			if err != nil {
				return err
			}
			if len(args) > 0 {
				return v.showJob(cmd.Context(), r, args[0])
			}
			if r.JSON {
				p, err := progress.Of(v.Record, v.Items, v.Special, r.Now())
				if err != nil {
					return err
				}
				return r.PrintJSON(p)
			}
			shown, err := v.Page(r.Now(), all)
			if err != nil {
				return err
			}
			return r.ShowPage(cmd.Context(), shown)
		},
	}
	cmd.Flags().BoolVar(&all, "all", false, "every list in full, and the chart")
	cmd.AddCommand(readyCommand(r), whyCommand(r), exportCommand(r), importCommand(r), copyCommand(r), forgetCommand(r))
	return cmd
}

// Show shows what a record comes to, in a session that is open, to a learner of a name.
func Show(r *cli.Run, s *sitting.Session, rec *record.Record, name string) error {
	v, err := progress.ViewOf(s)
	if err != nil {
		return err
	}
	shown, err := v.Of(rec, name).Page(r.Now(), s.OnPages) // where pages are scrolled all of it fits one
	if err != nil {
		return err
	}
	return s.Face.Show(append(shown, page.Pause{}))
}
