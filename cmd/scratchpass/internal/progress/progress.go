// Package progress looks at a learner's record: what they can do, what stands between
// them and the lathe, and the answers themselves, to take along or to delete.
package progress

import (
	"time"

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
			p, err := progress.Of(v.record, v.items, v.special, r.Now())
			if err != nil {
				return err
			}
			if r.JSON {
				return r.PrintJSON(p)
			}
			shown, err := v.page(p, r.Now(), all)
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

// Show shows what a record comes to, in a session that is open.
func Show(r *cli.Run, s *sitting.Session, rec *record.Record) error {
	v, err := viewOf(s, rec)
	if err != nil {
		return err
	}
	p, err := progress.Of(v.record, v.items, v.special, r.Now())
	if err != nil {
		return err
	}
	shown, err := v.page(p, r.Now(), false)
	if err != nil {
		return err
	}
	return s.Face.Show(append(shown, page.Pause{}))
}

// page is the progress on one screen, or with every list in full.
func (v view) page(p progress.Progress, now time.Time, all bool) (page.Page, error) {
	plan, err := v.course.Plan(v.record, v.session.System, now)
	if err != nil {
		return nil, err
	}
	if all {
		return p.Whole(v.speaker(), plan, now), nil
	}
	return p.Page(v.speaker(), plan, now), nil
}
