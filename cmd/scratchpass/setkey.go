package main

import (
	"fmt"

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
			if holds(dir, "sheets*") {
				return usage("%s has sheets in it; a key never travels with its sheets: give another --out", dir)
			}
			return d.makeKeys(dir, formats)
		},
	}
	f.add(cmd)
	cmd.Flags().StringVar(&f.out, "out", "", "`DIR` for the files (default: named after the set)")
	cmd.Flags().StringVar(&f.formats, "format", "pdf", "pdf, html, text")
	return cmd
}

// makeKeys makes keys, the class tally at the end of each document.
func (d *desk) makeKeys(dir string, formats []string) error {
	out := newFolder(dir)
	defer out.drop()
	var papers []*documents
	for _, name := range formats {
		x, err := d.documents(out, name, "key")
		if err != nil {
			return err
		}
		x.last = func(w handout.Writer) error { return w.Tally(d.maker.Blueprint.Title, d.printer.TallyItems()) }
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
	if err := out.keep(); err != nil {
		return err
	}
	fmt.Fprintln(d.app.out, d.say("set-keyed", "n", len(d.class), "where", dir))
	return nil
}
