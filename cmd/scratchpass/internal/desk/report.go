package desk

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/report"
	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/set"
)

func reportCommand(r *cli.Run) *cobra.Command {
	var class classFlags
	var answers answersFlag
	var decisions decisionsFlag
	var pdf string
	cmd := &cobra.Command{
		Use:   "report BLUEPRINT",
		Short: "What the class got wrong, and where to look back",
		Args:  cli.OneArgument("a blueprint"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if pdf == "-" {
				return cli.Usagef("--pdf -: give the name of a file")
			}
			if r.JSON && pdf != "" {
				return cli.Usagef("--json and --pdf: give one of the two")
			}
			ctx := r.UntilStopped(cmd.Context())
			m, err := openMarking(ctx, r, args[0], &class, answers)
			if err != nil {
				return err
			}
			if err := m.decide(ctx, decisions, m.marksFolder()); err != nil {
				return err
			}
			return m.report(ctx, pdf)
		},
	}
	class.addTo(cmd)
	answers.addTo(cmd)
	decisions.addTo(cmd)
	cmd.Flags().StringVar(&pdf, "pdf", "", "write it as a PDF to `FILE`")
	return cmd
}

// report gathers what the class got wrong and shows it, as JSON, a PDF or a page.
func (m *marking) report(ctx context.Context, pdf string) error {
	summary := set.NewSummary(m.maker, m.lib)
	if err := m.each(ctx, func(r set.Result) error { summary.Add(r); return nil }); err != nil {
		return err
	}
	result := summary.Report()
	m.tellTwice(m.run.Err)
	m.tellDecisions(m.run.Err)
	if m.run.JSON {
		return m.run.PrintJSON(result)
	}
	if pdf == "" {
		return m.run.ShowPage(ctx, report.Page(m.printer.Page(result)))
	}
	if err := m.mend(filepath.Dir(pdf)); err != nil {
		return err
	}
	if err := files.WriteWhole(pdf, func(file *os.File) error {
		return m.unlessStopped(ctx, func() error {
			return handout.ReportPDF(file, m.printer.Page(result), m.printer.Options(m.maker.Blueprint.Title))
		})
	}); err != nil {
		return err
	}
	fmt.Fprintln(m.run.Out, m.say("ready-written", "where", pdf))
	return nil
}
