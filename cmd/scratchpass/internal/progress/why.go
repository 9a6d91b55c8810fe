package progress

import (
	"context"
	"slices"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/tasks"
)

func whyCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "why [TASK]",
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
				if _, err := tasks.Find(task); err != nil {
					return cli.UsageError(err)
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

// showWhy tells of one task, or in a line each of all that were begun and are not shown.
func (v view) showWhy(ctx context.Context, r *cli.Run, task string) error {
	of, _, err := v.record.Summaries()
	if err != nil {
		return err
	}
	if task == "" {
		all := progress.Whys(v.items, of, r.Now())
		if r.JSON {
			return r.PrintJSON(all)
		}
		return r.ShowPage(ctx, progress.WhysPage(all, v.speaker()))
	}
	at := slices.IndexFunc(v.items, func(it schedule.Item) bool { return it.Task == task })
	one := progress.WhyOf(v.items[at], of[task], r.Now())
	if r.JSON {
		return r.PrintJSON(one)
	}
	return r.ShowPage(ctx, one.Page(v.speaker()))
}
