package progress

import (
	"context"
	"slices"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/problem"
)

func whyCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "why [TASK|JOB]",
		Short: "Why a task is not shown yet, and what is missing",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return cli.Usagef("progress why wants one task or none, such as pitch-from-tpi")
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			task := cli.OptionalArgument(args)
			if len(args) > 0 {
				if lib, err := r.Library(); err == nil && slices.Contains(lib.JobNames(), task) {
					v, err := open(cmd.Context(), r, false)
					if err != nil {
						return err
					}
					return v.showJob(cmd.Context(), r, task)
				}
				if err := counted(r, task); err != nil {
					return err
				}
			}
			v, err := open(cmd.Context(), r, false)
			if err != nil {
				return err
			}
			return v.showWhy(cmd.Context(), r, task)
		},
	}
}

// counted returns an error unless a task counts for what is shown. An instructor's own
// question does not.
func counted(r *cli.Run, task string) error {
	of, err := r.Tasks()
	if err != nil {
		return err
	}
	t, err := of.Find(task)
	if err != nil {
		return cli.UsageError(err)
	}
	if t.Stage == problem.Own {
		return cli.Usagef("%s is the instructor's own: its answers are kept, and do not count for ready to ask", task)
	}
	return nil
}

// showWhy tells of one task, or in a line each of all that were begun and are not shown.
func (v view) showWhy(ctx context.Context, r *cli.Run, task string) error {
	of, _, err := v.Record.Summaries()
	if err != nil {
		return err
	}
	if task == "" {
		all := progress.Whys(v.Items, of, r.Now())
		if r.JSON {
			return r.PrintJSON(all)
		}
		return r.ShowPage(ctx, progress.WhysPage(all, v.Speaker()))
	}
	at := slices.IndexFunc(v.Items, func(it schedule.Item) bool { return it.Task == task })
	one := progress.WhyOf(v.Items[at], of[task], r.Now())
	if r.JSON {
		return r.PrintJSON(one)
	}
	return r.ShowPage(ctx, one.Page(v.Speaker()))
}
