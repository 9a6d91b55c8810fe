package main

import (
	"github.com/spf13/cobra"

	"scratchpass/calc"
	"scratchpass/quiz/bench"
)

// tableWidth is how wide the columns of a card are.
const tableWidth = 72

func (a *app) dryrunPlan() *cobra.Command {
	var flags jobFlags
	var angle float64
	cmd := &cobra.Command{
		Use:   "plan [JOB|FILE]",
		Short: "The pass-by-pass card of a job on your lathe, to rehearse with",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			lib, err := a.library()
			if err != nil {
				return err
			}
			name := ""
			if len(args) > 0 {
				name = args[0]
			}
			r, job, err := a.job(lib, name, &flags)
			if err != nil {
				return err
			}
			p, err := bench.NewPlan(job, calc.Degrees(angle))
			if err != nil {
				return usageError{err}
			}
			if a.json {
				return a.print(p.Document(r.Name))
			}
			s, err := a.open()
			if err != nil {
				return err
			}
			return a.showPage(s.PlanPage(p, !a.plain && a.width() >= tableWidth))
		},
	}
	flags.add(cmd)
	cmd.Flags().Float64Var(&angle, "angle", 29.5, "of the compound from the cross-slide line: 29, 29.5 or 30")
	return cmd
}
