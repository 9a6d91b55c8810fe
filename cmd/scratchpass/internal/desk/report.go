package desk

import (
	"context"
	"fmt"
	"io"
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
	var to reportFiles
	cmd := &cobra.Command{
		Use:   "report BLUEPRINT",
		Short: "What the class got wrong, and where to look back",
		Args:  cli.OneArgument("a blueprint"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := to.check(r.JSON); err != nil {
				return err
			}
			ctx := r.UntilStopped(cmd.Context())
			m, err := openMarking(ctx, r, args[0], &class, answers)
			if err != nil {
				return err
			}
			if err := m.decide(ctx, decisions, m.marksFolder()); err != nil {
				return err
			}
			return m.report(ctx, to)
		},
	}
	class.addTo(cmd)
	answers.addTo(cmd)
	decisions.addTo(cmd)
	cmd.Flags().StringVar(&to.pdf, "pdf", "", "write it as a PDF to `FILE`")
	cmd.Flags().StringVar(&to.html, "html", "", "write it as HTML to `FILE`")
	return cmd
}

// reportFiles are the files that a report is written to; without one it is shown.
type reportFiles struct{ pdf, html string }

func (f reportFiles) check(json bool) error {
	for _, file := range []struct{ option, name string }{{"--pdf", f.pdf}, {"--html", f.html}} {
		if file.name == "-" {
			return cli.Usagef("%s -: give the name of a file", file.option)
		}
		if json && file.name != "" {
			return cli.Usagef("--json and %s: give one of the two", file.option)
		}
	}
	return nil
}

// report gathers what the class got wrong and shows it, as JSON, files or a page.
func (m *marking) report(ctx context.Context, to reportFiles) error {
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
	if to == (reportFiles{}) {
		return m.run.ShowPage(ctx, report.Page(m.printer.Page(result)))
	}
	if err := m.writeReport(ctx, to.pdf, result, handout.ReportPDF); err != nil {
		return err
	}
	return m.writeReport(ctx, to.html, result, handout.ReportHTML)
}

// writeReport writes it to a file, if that has a name.
func (m *marking) writeReport(ctx context.Context, name string, result set.Report, write func(io.Writer, handout.Report, handout.Options) error) error {
	if name == "" {
		return nil
	}
	if err := m.mend(filepath.Dir(name)); err != nil {
		return err
	}
	if err := files.WriteWhole(name, func(file *os.File) error {
		return m.unlessStopped(ctx, func() error {
			return write(file, m.printer.Page(result), m.printer.Options(m.maker.Blueprint.Title))
		})
	}); err != nil {
		return err
	}
	fmt.Fprintln(m.run.Out, m.say("ready-written", "where", name))
	return nil
}
