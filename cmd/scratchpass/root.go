package main

import (
	"fmt"
	"os"
	"runtime/debug"
	"time"

	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// root builds the command line.
func (a *app) root(args []string) *cobra.Command {
	root := &cobra.Command{
		Use:   "scratchpass",
		Short: "Rehearse single-point threading before you stand at the lathe",
		Long: `Scratchpass teaches and asks the numbers and decisions of cutting a thread with a
single-point tool on a manual lathe. It is rehearsal, not permission: local rules
and your instructor come first.`,
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          noArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, in := tty(a.in)
			_, out := tty(a.out)
			if !in || !out {
				return a.about()
			}
			s, err := a.open()
			if err != nil {
				return err
			}
			rehearse := func() error { return a.rehearseIn(s, "", &jobFlags{}, false, "") }
			if a.record == nil {
				return s.Home(a.keepLathe, nil, nil, rehearse)
			}
			best := func() error {
				return s.Best(lessons.CourseOrder(s.Library, s.System), a.summaries, problem.NumbersGiven)
			}
			return s.Home(a.keepLathe, best, a.showProgress, rehearse)
		},
	}
	root.SetFlagErrorFunc(func(_ *cobra.Command, err error) error { return usageError{err} })
	f := root.PersistentFlags()
	f.Uint64Var(&a.seed, "seed", 0, "draw the same problems again")
	f.StringVar(&a.units, "units", "", "in or mm (default: those of your lathe)")
	f.StringVar(&a.latheFile, "lathe", "", "`FILE` that describes a lathe, instead of your own")
	f.StringVar(&a.contentDir, "content", "", "`DIR` with your own lessons and wording")
	f.StringVar(&a.recordFile, "record", "", "`FILE` to keep answers in, or none (default: in your data folder)")
	f.StringVar(&a.learner, "learner", "me", "`NAME` of the learner, on a shared machine")
	f.StringVar(&a.asOf, "as-of", "", "practise as if it were this `DAY`, such as 2026-11-27: to try what comes back when")
	f.BoolVar(&a.plain, "plain", false, "text from top to bottom, for screen readers and pipes")
	f.BoolVar(&a.json, "json", false, "print one JSON object")
	root.PersistentPreRunE = func(cmd *cobra.Command, _ []string) error {
		a.seeded = cmd.Flags().Changed("seed")
		if _, err := time.Parse(time.DateOnly, a.asOf); a.asOf != "" && err != nil {
			return usage("--as-of %q: give a day such as 2026-11-27", a.asOf)
		}
		if a.units == "" {
			return nil
		}
		if _, err := machine.ParseSystem(a.units); err != nil {
			return usageError{err}
		}
		return nil
	}
	root.AddCommand(a.learn(), a.quiz(), a.work(args), a.thread(), a.terms(), a.sources(), a.safety(), a.progress(), a.drill(), a.dryrun(), a.set(), a.describe(), a.content())
	return root
}

// noArguments is cobra.NoArgs with an error that offers commands.
func noArguments(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var names []string
	for _, sub := range cmd.Commands() {
		names = append(names, sub.Name())
	}
	return usage("unknown command %q%s (scratchpass --help lists them)", args[0], content.DidYouMean(args[0], names))
}

// about says what the program is, where no one is at a terminal.
func (a *app) about() error {
	_, err := fmt.Fprint(a.out, `Scratchpass: rehearse single-point threading before you stand at the lathe.
  scratchpass                      at a terminal: the home screen
  scratchpass learn                the lessons; learn how-deep-to-go --plain for a pipe or a screen reader
  scratchpass quiz                 practice
  scratchpass work --list          what can be worked out with your own numbers
  scratchpass lathe                describe your machine
  scratchpass --help               everything
This is rehearsal, not permission. Local rules and your instructor come first.
`)
	return err
}

func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "development"
	}
	return info.Main.Version
}

// levelFlag adds --level to a command.
func levelFlag(cmd *cobra.Command, level *int) {
	cmd.Flags().IntVar(level, "level", 1, "1 numbers given, 2 one thing to find first, 3 as on the job")
}

func checkLevel(level int) (problem.Level, error) {
	if level < 1 || level > 3 {
		return 0, usage("--level %d: give 1, 2 or 3", level)
	}
	return problem.Level(level), nil
}

// describe is the lathe command.
func (a *app) describe() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "lathe",
		Short: "Describe your machine, so that problems fit it",
		Args:  cobra.NoArgs,
	}
	show := cmd.Flags().Bool("show", false, "show the lathe that problems are drawn for")
	forget := cmd.Flags().Bool("forget", false, "go back to the lathe that ships")
	cmd.RunE = func(*cobra.Command, []string) error {
		switch {
		case *forget:
			return a.forgetLathe()
		case *show || a.json:
			l, _, err := a.lathe()
			if err != nil {
				return err
			}
			return a.showLathe(l)
		}
		s, err := a.open()
		if err != nil {
			return err
		}
		l, err := s.DescribeLathe()
		if err != nil {
			return err
		}
		where, err := a.keepLathe(l)
		if err == nil {
			fmt.Fprintln(a.out, s.LatheKept(where))
		}
		return err
	}
	return cmd
}

func (a *app) keepLathe(l machine.Lathe) (string, error) {
	path, err := keptLathe()
	if a.latheFile != "" {
		path, err = a.latheFile, nil
	}
	if err != nil {
		return "", err
	}
	return path, machine.WriteLathe(path, l)
}

func (a *app) forgetLathe() error {
	path, err := keptLathe()
	if err != nil {
		return err
	}
	if err := os.Remove(path); err != nil && !os.IsNotExist(err) {
		return err
	}
	fmt.Fprintln(a.out, "Problems are now drawn for the lathe that ships.")
	return nil
}
