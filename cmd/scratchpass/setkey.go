package main

import (
	"cmp"
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/set"
)

func (a *app) setKey() *cobra.Command {
	var f setFlags
	var sheets string
	cmd := &cobra.Command{
		Use:   "key BLUEPRINT",
		Short: "Make the keys of a set, apart from its sheets",
		Args:  exactly(1, "a blueprint"),
		RunE: func(_ *cobra.Command, args []string) error {
			formats, err := readFormats(f.formats)
			if err != nil {
				return err
			}
			d, err := a.openDesk(args[0], &f, false)
			if err != nil {
				return err
			}
			dir := cmp.Or(f.out, d.maker.Blueprint.Set+"-key")
			if files.Holds(dir, sheetFiles, codeFiles) {
				return usage("%s has sheets in it; a key never travels with its sheets: give another --out", dir)
			}
			if err := d.checkSheets(sheets); err != nil {
				return err
			}
			return d.makeKeys(dir, formats, f.replace)
		},
	}
	f.add(cmd)
	f.addOut(cmd)
	cmd.Flags().StringVar(&sheets, "sheets", "", "`DIR` of the sheets that the keys must fit (default: look where set make puts them)")
	cmd.Flags().StringVar(&f.formats, "format", "pdf", "pdf, html, text")
	return cmd
}

// checkSheets compares the codes with those of the sheets that were made. Where they lie
// in the usual place they may be of an earlier run, so that those only get a warning.
func (d *desk) checkSheets(dir string) error {
	list := filepath.Join(cmp.Or(dir, d.maker.Blueprint.Set+"-sheets"), codeList)
	others, err := d.maker.OtherSheets(list, d.class)
	switch {
	case err != nil && dir == "":
		return nil // no sheets there
	case err != nil:
		return usageOr(err)
	case len(others) == 0:
		return nil
	}
	o := others[0]
	told := d.say("set-other-sheets", "list", list, "n", len(others), "id", o.Who.ID, "there", o.There, "here", o.Here)
	if dir != "" {
		return usage("%s", told)
	}
	_, err = fmt.Fprintln(d.app.err, told)
	return err
}

// makeKeys makes keys, the class tally at the end of each document.
func (d *desk) makeKeys(dir string, formats []string, replace bool) error {
	out := files.Stage(dir)
	out.Private = true
	defer out.Rollback()
	papers := d.papers(out, "key", len(d.class), formats, func(w handout.Writer) error {
		if err := w.Report(d.printer.Roads()); err != nil {
			return err
		}
		return w.Tally(d.maker.Blueprint.Title, d.printer.TallyItems())
	})
	err := d.each(func(who set.Apprentice, items []set.Item) error {
		key := d.printer.Key(who, items)
		return papers.each(func(w handout.Writer) error { return w.Key(key) })
	})
	if err != nil {
		return err
	}
	if err := papers.close(); err != nil {
		return err
	}
	if err := d.keep(out, replace, keyFiles); err != nil {
		return err
	}
	return d.done("set-keyed", len(d.class), dir)
}
