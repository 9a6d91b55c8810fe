package main

import (
	"context"
	"slices"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/browse"
	"scratchpass/cmd/scratchpass/internal/classroom"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/cmd/scratchpass/internal/desk"
	"scratchpass/cmd/scratchpass/internal/learner"
	"scratchpass/cmd/scratchpass/internal/lookup"
	"scratchpass/cmd/scratchpass/internal/problems"
	"scratchpass/cmd/scratchpass/internal/progress"
	"scratchpass/cmd/scratchpass/internal/rehearse"
	"scratchpass/cmd/scratchpass/internal/school"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/home"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// group is the commands of one package, by their names.
type group struct {
	names []string
	build func(r *cli.Run, args []string) []*cobra.Command
}

var groups = []group{
	{[]string{"learn", "quiz", "drill", "lathe"}, func(r *cli.Run, _ []string) []*cobra.Command {
		return learner.Commands(r, problems.AskAndMark(r)...)
	}},
	{[]string{"browse"}, func(r *cli.Run, _ []string) []*cobra.Command {
		return []*cobra.Command{browse.Command(r, func(ctx context.Context, s *sitting.Session, rec *record.Record) home.Doors {
			return learner.HomeDoors(ctx, r, s, rec, doors(r))
		}, func(s *sitting.Session, rec *record.Record) []web.Lookup {
			all := append(lookup.Pages(s), problems.Pages(s)...)
			return append(append(all, rehearse.Pages(r, s)...), progress.Pages(r, s, rec)...)
		})}
	}},
	{[]string{"work"}, func(r *cli.Run, args []string) []*cobra.Command { return []*cobra.Command{problems.Work(r, args)} }},
	{[]string{"progress"}, func(r *cli.Run, _ []string) []*cobra.Command { return []*cobra.Command{progress.Command(r)} }},
	{[]string{"dryrun"}, func(r *cli.Run, _ []string) []*cobra.Command { return []*cobra.Command{rehearse.Command(r)} }},
	{[]string{"class"}, func(r *cli.Run, _ []string) []*cobra.Command { return []*cobra.Command{classroom.Command(r)} }},
	{[]string{"serve"}, func(r *cli.Run, _ []string) []*cobra.Command {
		return []*cobra.Command{school.Command(r, school.Doors{Flows: learner.Flows, Rehearse: func(rec *record.Record) school.Rehearsals { return rehearse.InRecord(r, rec) },
			Progress: func(s *sitting.Session, rec *record.Record, name string) error { return progress.Show(r, s, rec, name) }})}
	}},
	{[]string{"set"}, func(r *cli.Run, _ []string) []*cobra.Command { return []*cobra.Command{desk.Command(r)} }},
	{[]string{"thread", "terms", "sources", "safety", "content", "notices"}, func(r *cli.Run, _ []string) []*cobra.Command { return lookup.Commands(r) }},
}

// called are the groups that a command line may call: where it begins with a command,
// those that it names, else all of them, for help and completion list them, and who
// mistypes one is offered others. To build all takes longer than many a command.
func called(args []string) (found []group, byName bool) {
	for _, g := range groups {
		if slices.ContainsFunc(g.names, func(name string) bool { return slices.Contains(args, name) }) {
			found = append(found, g)
			byName = byName || slices.Contains(g.names, args[0])
		}
	}
	if !byName {
		return groups, false
	}
	return found, true
}

// rootCommand builds the command line for these arguments.
func rootCommand(r *cli.Run, args []string) *cobra.Command {
	root := &cobra.Command{
		Use:   "scratchpass",
		Short: "Rehearse single-point threading before you stand at the lathe",
		Long: `Scratchpass teaches and asks the numbers and decisions of cutting a thread with a
single-point tool on a manual lathe. It is rehearsal, not permission: local rules
and your instructor come first.`,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return learner.Home(cmd.Context(), r, doors(r))
		},
	}
	root.SetFlagErrorFunc(func(_ *cobra.Command, err error) error { return cli.UsageError(err) })
	r.Options.AddTo(root)
	found, byName := called(args)
	for _, g := range found {
		root.AddCommand(g.build(r, args)...)
	}
	if !byName { // the options and commands that only a command line without a command has
		root.Version = cli.Version()
	}
	root.CompletionOptions.DisableDefaultCmd = byName
	return root
}

// doors are what the home screen opens of other groups of commands.
func doors(r *cli.Run) learner.Doors {
	return learner.Doors{
		Progress: func(s *sitting.Session, rec *record.Record) error {
			return progress.Show(r, s, rec, rec.Learner)
		},
		Rehearse: func(s *sitting.Session) error { return rehearse.FromHome(r, s) },
	}
}
