package desk

import (
	"cmp"
	"context"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/quiz/set"
)

func markCommand(r *cli.Run) *cobra.Command {
	var class classFlags
	var to outFlags
	var answers answersFlag
	var decisions decisionsFlag
	cmd := &cobra.Command{
		Use:   "mark BLUEPRINT",
		Short: "Mark the answers that came back",
		Args:  cli.OneArgument("a blueprint"),
		RunE: func(cmd *cobra.Command, args []string) error {
			formats, err := readFormats(to.formats, formatXLSX, formatRoster)
			if err != nil {
				return err
			}
			if class.forms > 0 && slices.Contains(formats, formatRoster) {
				return cli.Usagef("--format oneroster wants the ids of a --roster: forms have none")
			}
			ctx := r.UntilStopped(cmd.Context())
			m, err := openMarking(ctx, r, args[0], &class, answers)
			if err != nil {
				return err
			}
			dir := cmp.Or(to.dir, m.marksFolder())
			if err := m.decide(ctx, decisions, dir); err != nil {
				return err
			}
			if r.JSON {
				return m.printJSON(ctx, r.Out)
			}
			if err := m.mend(dir); err != nil {
				return err
			}
			if holds(dir, sheetFiles, codeFiles) {
				return cli.Usagef("%s has sheets in it; marks and feedback have keys in them and never travel with the sheets: give another --out", dir)
			}
			return m.writeMarks(ctx, dir, formats, to.replace)
		},
	}
	class.addTo(cmd)
	answers.addTo(cmd)
	decisions.addTo(cmd)
	to.addTo(cmd, "of the feedback: pdf, html, text; of the marks also: xlsx, oneroster")
	return cmd
}

// marksFolder is the folder of the marks where none is named.
func (m *marking) marksFolder() string { return m.maker.Blueprint.Set + "-marks" }

// printJSON writes all marks as one object.
func (m *marking) printJSON(ctx context.Context, w io.Writer) error {
	j, err := set.NewMarksJSON(w, m.maker.Blueprint)
	if err != nil {
		return err
	}
	if err := m.each(ctx, j.Add); err != nil {
		return err
	}
	m.tellTwice(m.run.Err)
	m.tellDecisions(m.run.Err)
	return j.Close()
}
