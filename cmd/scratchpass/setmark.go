package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/lessons"
	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/set"
)

// marking opens a set with the answers that came back.
func (a *app) marking(blueprint string, f *setFlags, paths []string) (*desk, *set.Marker, error) {
	if len(paths) == 0 {
		return nil, nil, usage("which answers? Give --answers FILE: a CSV, or what quiz --out wrote; more than once for more files")
	}
	d, err := a.openDesk(blueprint, f, false)
	if err != nil {
		return nil, nil, err
	}
	var answers []set.Given
	stems := map[string]string{}
	for _, file := range paths {
		stem := strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
		if other, twice := stems[stem]; twice && f.forms != 0 {
			return nil, nil, usage("--answers %q and %q: with forms the name of a file tells who it is from; name them ada.jsonl, ben.jsonl", other, file)
		}
		stems[stem] = file
		more, err := set.ReadAnswers(file)
		if err != nil {
			return nil, nil, usageOr(err)
		}
		answers = append(answers, more...)
	}
	m, err := set.NewMarker(d.maker, d.class, answers)
	if err != nil {
		return nil, nil, usageError{err}
	}
	for _, row := range m.Names {
		fmt.Fprintln(a.err, d.say("set-names", "row", row))
	}
	return d, m, nil
}

func (a *app) setMark() *cobra.Command {
	var f setFlags
	var answers []string
	cmd := &cobra.Command{
		Use:   "mark BLUEPRINT",
		Short: "Mark the answers that came back",
		Args:  exactly(1, "a blueprint"),
		RunE: func(_ *cobra.Command, args []string) error {
			formats, err := readFormats(f.formats)
			if err != nil {
				return err
			}
			d, m, err := a.marking(args[0], &f, answers)
			if err != nil {
				return err
			}
			if a.json {
				return d.marksJSON(a.out, m)
			}
			dir := cmp.Or(f.out, d.maker.Blueprint.Set+"-marks")
			if files.Holds(dir, sheetFiles, codeFiles) {
				return usage("%s has sheets in it; marks and feedback have keys in them and never travel with the sheets: give another --out", dir)
			}
			return d.writeMarks(dir, formats, m, f.replace)
		},
	}
	f.add(cmd)
	cmd.Flags().StringArrayVar(&answers, "answers", nil, "`FILE` of answers; may be given more than once")
	f.addOut(cmd)
	cmd.Flags().StringVar(&f.formats, "format", "pdf", "of the feedback: pdf, html, text")
	return cmd
}

// marked marks one apprentice after the other until someone stops it.
func (d *desk) marked(m *set.Marker, do func(set.Result) error) error {
	return m.Each(func(r set.Result) error {
		if err := d.stopped(); err != nil {
			return err
		}
		return do(r)
	})
}

// marksJSON writes all marks as one object.
func (d *desk) marksJSON(w io.Writer, m *set.Marker) error {
	j, err := set.NewMarksJSON(w, d.maker.Blueprint)
	if err != nil {
		return err
	}
	if err := d.marked(m, j.Add); err != nil {
		return err
	}
	return j.Close()
}

// writeMarks writes marks as CSV and JSON, and what each apprentice is told.
func (d *desk) writeMarks(dir string, formats []string, m *set.Marker, replace bool) error {
	out := files.Stage(dir)
	out.Private = true
	defer out.Rollback()
	table, endTable, err := out.Create("marks.csv")
	if err != nil {
		return err
	}
	object, endObject, err := out.Create("marks.json")
	if err != nil {
		return err
	}
	rows := set.NewMarksCSV(table)
	j, err := set.NewMarksJSON(object, d.maker.Blueprint)
	if err != nil {
		return err
	}
	papers := d.papers(out, "feedback", m.People(), formats, nil)
	n, handed, open := 0, 0, 0
	err = d.marked(m, func(r set.Result) error {
		n++
		d.progress(n, m.People())
		if err := rows.Add(r); err != nil {
			return err
		}
		if err := j.Add(r); err != nil {
			return err
		}
		if !r.Handed {
			return nil
		}
		handed++
		open += r.Open
		feedback := d.printer.Feedback(r)
		return papers.each(func(w handout.Writer) error { return w.Report(feedback) })
	})
	for _, end := range []func() error{rows.Close, endTable, j.Close, endObject} {
		if e := end(); err == nil {
			err = e
		}
	}
	if err == nil {
		err = papers.close()
	}
	if err == nil {
		err = d.keep(out, replace, feedbackFiles)
	}
	if err != nil {
		return err
	}
	fmt.Fprintln(d.app.out, d.say("set-marked", "n", n, "handed", handed, "where", dir))
	if open > 0 {
		fmt.Fprintln(d.app.out, d.say("set-unread", "n", open))
	}
	if m.Repeats > 0 {
		fmt.Fprintln(d.app.out, d.say("set-repeats", "n", m.Repeats))
	}
	return nil
}

func (a *app) setReport() *cobra.Command {
	var f setFlags
	var answers []string
	var pdf string
	cmd := &cobra.Command{
		Use:   "report BLUEPRINT",
		Short: "What the class got wrong, and where to look back",
		Args:  exactly(1, "a blueprint"),
		RunE: func(_ *cobra.Command, args []string) error {
			if pdf == "-" {
				return usage("--pdf -: give the name of a file")
			}
			if a.json && pdf != "" {
				return usage("--json and --pdf: give one of the two")
			}
			d, m, err := a.marking(args[0], &f, answers)
			if err != nil {
				return err
			}
			summary := set.NewSummary(d.maker, d.lib)
			if err := d.marked(m, func(r set.Result) error { summary.Add(r); return nil }); err != nil {
				return err
			}
			r := summary.Report()
			if m.Repeats > 0 {
				fmt.Fprintln(a.err, d.say("set-repeats", "n", m.Repeats))
			}
			switch {
			case a.json:
				return a.print(r)
			case pdf != "":
				if err := files.WriteWhole(pdf, func(file *os.File) error { return d.reportPDF(file, r) }); err != nil {
					return err
				}
				fmt.Fprintln(a.out, d.say("ready-written", "where", pdf))
				return nil
			}
			return a.showPage(lessons.ReportText(d.printer.Page(r), a.width()))
		},
	}
	f.add(cmd)
	cmd.Flags().StringArrayVar(&answers, "answers", nil, "`FILE` of answers; may be given more than once")
	cmd.Flags().StringVar(&pdf, "pdf", "", "write it as a PDF to `FILE`")
	return cmd
}

func (d *desk) reportPDF(file io.Writer, r set.Report) error {
	w, err := handout.PDF(file, d.printer.Options(d.maker.Blueprint.Title))
	if err != nil {
		return err
	}
	if err := w.Report(d.printer.Page(r)); err != nil {
		return err
	}
	return w.Close()
}
