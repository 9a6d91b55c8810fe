package main

import (
	"cmp"

	"github.com/spf13/cobra"

	"scratchpass/quiz/handout"
	"scratchpass/quiz/set"
)

func (a *app) setKey() *cobra.Command {
	var f setFlags
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
			if holds(dir, "sheets", "codes") {
				return usage("%s has sheets in it; a key never travels with its sheets: give another --out", dir)
			}
			return d.makeKeys(dir, formats, f.replace)
		},
	}
	f.add(cmd)
	f.addOut(cmd)
	cmd.Flags().StringVar(&f.formats, "format", "pdf", "pdf, html, text")
	return cmd
}

// makeKeys makes keys, the class tally at the end of each document.
func (d *desk) makeKeys(dir string, formats []string, replace bool) error {
	out := newFolder(dir)
	out.private = true
	defer out.drop()
	papers := d.papers(out, "key", formats, func(w handout.Writer) error {
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
	if err := out.keep(replace, d.there, "key"); err != nil {
		return err
	}
	return d.done("set-keyed", len(d.class), dir)
}
