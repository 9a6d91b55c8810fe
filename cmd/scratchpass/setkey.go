package main

import (
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
			dir := f.out
			if dir == "" {
				dir = d.maker.Blueprint.Set + "-key"
			}
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
	var papers []*documents
	for _, name := range formats {
		x, err := d.documents(out, name, "key")
		if err != nil {
			return err
		}
		x.last = func(w handout.Writer) error {
			if err := w.Report(d.printer.Roads()); err != nil {
				return err
			}
			return w.Tally(d.maker.Blueprint.Title, d.printer.TallyItems())
		}
		papers = append(papers, x)
	}
	err := d.each(func(who set.Apprentice, items []set.Item) error {
		key := d.printer.Key(who, items)
		for _, x := range papers {
			w, err := x.next()
			if err == nil {
				err = w.Key(key)
			}
			if err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	for _, x := range papers {
		if err := x.close(); err != nil {
			return err
		}
	}
	if err := out.keep(replace, d.there, "key"); err != nil {
		return err
	}
	return d.done("set-keyed", len(d.class), dir)
}
