package desk

import (
	"cmp"
	"context"
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/set"
)

func keyCommand(r *cli.Run) *cobra.Command {
	var class classFlags
	var to outFlags
	var sheets string
	cmd := &cobra.Command{
		Use:   "key BLUEPRINT",
		Short: "Make the keys of a set, apart from its sheets",
		Args:  cli.OneArgument("a blueprint"),
		RunE: func(cmd *cobra.Command, args []string) error {
			formats, err := readFormats(to.formats)
			if err != nil {
				return err
			}
			ctx := r.UntilStopped(cmd.Context())
			d, err := openDesk(ctx, r, args[0], &class, cli.FindAgain)
			if err != nil {
				return err
			}
			dir := cmp.Or(to.dir, d.maker.Blueprint.Set+"-key")
			if err := d.mend(dir); err != nil {
				return err
			}
			if holds(dir, sheetFiles, codeFiles) {
				return cli.Usagef("%s has sheets in it; a key never travels with its sheets: give another --out", dir)
			}
			if err := d.checkSheets(sheets); err != nil {
				return err
			}
			return d.makeKeys(ctx, dir, formats, to.replace)
		},
	}
	class.addTo(cmd)
	to.addTo(cmd, "pdf, html, text")
	cmd.Flags().StringVar(&sheets, "sheets", "", "`DIR` of the sheets that the keys must fit (default: look where set make puts them)")
	return cmd
}

// checkSheets compares the codes with those of the sheets that were made. Where they lie
// in the usual place they may be of an earlier run, so that those only get a warning.
func (d *desk) checkSheets(dir string) error {
	sheets := cmp.Or(dir, d.maker.Blueprint.Set+"-sheets")
	if err := d.mend(sheets); err != nil {
		return err
	}
	list := filepath.Join(sheets, codeList)
	others, err := d.maker.OtherSheets(list, d.class)
	switch {
	case err != nil && dir == "":
		return nil // no sheets there
	case err != nil:
		return usageUnlessFile(err)
	case len(others) == 0:
		return nil
	}
	o := others[0]
	told := d.say("set-other-sheets", "list", list, "n", len(others), "id", o.Who.ID, "there", o.There, "here", o.Here)
	if dir != "" {
		return cli.Usagef("%s", told)
	}
	_, err = fmt.Fprintln(d.run.Err, told)
	return err
}

// makeKeys makes keys, the class tally at the end of each document.
func (d *desk) makeKeys(ctx context.Context, dir string, formats []string, replace bool) error {
	out := d.stage(dir)
	out.Private = true
	defer out.Rollback()
	papers := d.papers(out, "key", len(d.class), formats, func(w handout.Writer) error {
		if err := w.Report(d.printer.Errors()); err != nil {
			return err
		}
		return w.Tally(d.maker.Blueprint.Title, d.printer.TallyItems())
	})
	grid := d.newGrid(out, formats)
	err := d.each(ctx, func(who set.Apprentice, items []set.Item) error {
		if err := grid.add(ctx, d.printer.GridRow(who, items)); err != nil {
			return err
		}
		key := d.printer.Key(who, items)
		return papers.each(ctx, func(w handout.Writer) error { return w.Key(key) })
	})
	if err != nil {
		return err
	}
	if err := papers.close(ctx); err != nil {
		return err
	}
	if err := grid.close(ctx); err != nil {
		return err
	}
	if err := d.keep(out, replace, keyFiles); err != nil {
		return err
	}
	return d.done("set-keyed", len(d.class), dir)
}
