package main

import (
	"context"
	"runtime/debug"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/cmd/scratchpass/internal/desk"
	"scratchpass/cmd/scratchpass/internal/learner"
	"scratchpass/cmd/scratchpass/internal/lookup"
	"scratchpass/cmd/scratchpass/internal/problems"
	"scratchpass/cmd/scratchpass/internal/progress"
	"scratchpass/cmd/scratchpass/internal/rehearse"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// rootCommand builds the command line. The arguments tell which of the many commands that
// are alike are wanted.
func rootCommand(r *cli.Run, args []string) *cobra.Command {
	root := &cobra.Command{
		Use:   "scratchpass",
		Short: "Rehearse single-point threading before you stand at the lathe",
		Long: `Scratchpass teaches and asks the numbers and decisions of cutting a thread with a
single-point tool on a manual lathe. It is rehearsal, not permission: local rules
and your instructor come first.`,
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return learner.Home(cmd.Context(), r, doors(r))
		},
	}
	root.SetFlagErrorFunc(func(_ *cobra.Command, err error) error { return cli.UsageError(err) })
	r.Options.AddTo(root)
	root.AddCommand(learner.Commands(r, problems.AskAndMark(r)...)...)
	root.AddCommand(problems.Work(r, args), progress.Command(r), rehearse.Command(r), desk.Command(r))
	root.AddCommand(lookup.Commands(r)...)
	return root
}

// doors are what the home screen opens of other groups of commands.
func doors(r *cli.Run) learner.Doors {
	return learner.Doors{
		Progress: func(ctx context.Context, s *sitting.Session, rec *record.Record) error {
			return progress.Show(ctx, r, s, rec)
		},
		Rehearse: func(s *sitting.Session) error { return rehearse.FromHome(r, s) },
	}
}

func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "development"
	}
	return info.Main.Version
}
