package rehearse

import (
	"github.com/spf13/cobra"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/rehearsal"
	"scratchpass/quiz/bench"
)

func planCommand(r *cli.Run) *cobra.Command {
	var sizes jobFlags
	var angle float64
	var light bool
	var sheet sheetFlags
	cmd := &cobra.Command{
		Use:   "plan [JOB|FILE]",
		Short: "The pass-by-pass card of a job on your lathe, to rehearse with",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := sheet.check(r.JSON); err != nil {
				return err
			}
			lib, err := r.Library()
			if err != nil {
				return err
			}
			named, job, err := findJob(r, lib, cli.OptionalArgument(args), &sizes)
			if err != nil {
				return err
			}
			plan := bench.NewPlan
			if light {
				plan = bench.NewLightPlan
			}
			compound := bench.AsUsual
			if cmd.Flags().Changed("angle") {
				compound = calc.Degrees(max(angle, 0))
			}
			p, err := plan(job, compound)
			if err != nil {
				return cli.UsageError(err)
			}
			if r.JSON {
				return r.PrintJSON(p.Document(named.Name))
			}
			s, _, err := r.Open(cmd.Context())
			if err != nil {
				return err
			}
			if sheet.wanted() {
				return sheet.write(r, s, p)
			}
			return r.ShowPage(cmd.Context(), rehearsal.Flow{Session: s}.PlanPage(p))
		},
	}
	sizes.addTo(cmd)
	cmd.Flags().Float64Var(&angle, "angle", 0, "of the compound from the cross-slide line: 29, 29.5 (usual) or 30; for an Acme thread 14.5")
	sheet.addTo(cmd)
	cmd.Flags().BoolVar(&light, "light", false, "small cuts, for a first thread, instead of cuts by equal area")
	return cmd
}
