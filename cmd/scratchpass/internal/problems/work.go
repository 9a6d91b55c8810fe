package problems

import (
	"context"
	"slices"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/page"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// Work has a command for every task; only those that were named are made, so that
// other commands start no slower for a long catalogue. Completion needs them all.
func Work(r *cli.Run, args []string) *cobra.Command {
	var all bool
	cmd := &cobra.Command{
		Use:   "work TASK --name value ...",
		Short: "The working of a task with your own numbers",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			of, err := r.Tasks()
			if err != nil {
				return err
			}
			if _, err := of.Find(args[0]); err != nil {
				return cli.UsageError(err)
			}
			return nil
		},
		RunE: func(*cobra.Command, []string) error {
			if !all {
				return cli.Usagef("work wants a task: work --list shows them, such as work compound-travel --tpi 12 --angle 29.5")
			}
			return listTasks(r)
		},
	}
	cmd.Flags().BoolVar(&all, "list", false, "list the tasks and what each wants to know")
	for _, t := range tasksFor(args) {
		if slices.Contains(args, t.Name) || slices.Contains(args, cobra.ShellCompRequestCmd) {
			cmd.AddCommand(workTask(r, t))
		}
	}
	return cmd
}

// tasksFor are the tasks that a command line may name: its options are not read yet, so the
// folder with the instructor's own questions is looked for among the words. One that can't be
// read is said when the options are.
func tasksFor(args []string) []*problem.Task {
	of, err := tasks.Set{}, error(nil)
	if lib, dirErr := cli.LibraryIn(cli.ContentDirIn(args)); dirErr == nil {
		of, err = tasks.Of(lib)
	}
	if err != nil {
		of = tasks.Set{}
	}
	return of.All()
}

// workTask is the command of one task; its inputs are the flags.
func workTask(r *cli.Run, t *problem.Task) *cobra.Command {
	cmd := &cobra.Command{
		Use:    t.Name,
		Short:  "The working of this task with your own numbers",
		Hidden: true, // work --list is the list
		Args:   cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			p, err := fromFlags(r, t, cmd)
			if err != nil {
				return err
			}
			return showWorked(cmd.Context(), r, p)
		},
	}
	for _, in := range t.Inputs {
		cmd.Flags().String(in.Name, "", in.Symbol+": "+in.Wants(machine.Imperial))
	}
	return cmd
}

// fromFlags makes a problem of the numbers that were given.
func fromFlags(r *cli.Run, t *problem.Task, cmd *cobra.Command) (*problem.Problem, error) {
	lathe, system, err := r.Lathe()
	if err != nil {
		return nil, err
	}
	if !t.Allows(system) {
		system = t.Systems[0]
	}
	v := problem.NewValues(t.Inputs, system)
	for _, in := range t.Inputs {
		f := cmd.Flags().Lookup(in.Name)
		if !f.Changed {
			continue
		}
		if err := v.Read(in.Name, f.Value.String()); err != nil {
			return nil, cli.UsageError(err)
		}
	}
	p, err := problem.FromValues(t, v, lathe)
	if err != nil {
		return nil, cli.Usagef("work %s: %w", t.Name, err)
	}
	return p, nil
}

func showWorked(ctx context.Context, r *cli.Run, p *problem.Problem) error {
	lib, err := r.Library()
	if err != nil {
		return err
	}
	w, err := wording.Load(lib, p.Task.Name)
	if err != nil {
		return err
	}
	if r.JSON {
		return r.PrintJSON(w.Document(p, true))
	}
	return r.ShowText(ctx, append(page.Page{page.Paragraph{Text: w.Task.Title}}, workedPage(p, w)...))
}
