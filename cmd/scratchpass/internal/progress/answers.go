package progress

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/page"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/files"
)

func exportCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "export [FILE]",
		Short: "Write your answers as JSON lines",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			v, err := open(cmd.Context(), r)
			if err != nil {
				return err
			}
			to := cli.OptionalArgument(args)
			if len(args) == 0 || to == "-" {
				_, err := v.record.Export(r.Out)
				return err
			}
			var n int
			err = files.WriteWhole(to, func(f *os.File) (err error) { n, err = v.record.Export(f); return err })
			if err == nil {
				fmt.Fprintln(r.Out, v.session.Say("progress-exported", "n", n))
			}
			return err
		},
	}
}

func importCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "import FILE",
		Short: "Read answers that were exported, all or none",
		Args:  cli.OneArgument("a file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			v, err := open(cmd.Context(), r)
			if err != nil {
				return err
			}
			f, err := os.Open(args[0])
			if err != nil {
				return err
			}
			defer f.Close()
			added, known, err := v.record.Import(f, schedule.Fold(v.items))
			if err == nil {
				fmt.Fprintln(r.Out, v.session.Say("progress-imported", "added", added, "known", known))
			}
			return err
		},
	}
}

func forgetCommand(r *cli.Run) *cobra.Command {
	yes := false
	cmd := &cobra.Command{
		Use:   "forget",
		Short: "Delete all of your answers, for good",
		Args:  cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			v, err := open(cmd.Context(), r)
			if err != nil {
				return err
			}
			if !yes {
				if yes, err = v.sureToForget(); err != nil {
					return err
				}
			}
			if !yes {
				fmt.Fprintln(r.Out, v.session.Say("progress-kept"))
				return nil
			}
			n, err := v.record.Forget()
			if err == nil {
				fmt.Fprintln(r.Out, v.session.Say("progress-forgot", "n", n, "learner", v.record.Learner))
			}
			return err
		},
	}
	cmd.Flags().BoolVar(&yes, "yes", false, "do not ask")
	return cmd
}

// sureToForget asks for the learner's name: no one types that by accident.
func (v view) sureToForget() (bool, error) {
	_, n, err := v.record.Summaries()
	if err != nil {
		return false, err
	}
	reply, err := v.session.Face.Ask(page.Prompt{Text: v.session.Say("progress-forget-ask", "n", n, "learner", v.record.Learner), Takes: page.Words{}})
	return reply == v.record.Learner, err
}
