package main

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/qti"
	"scratchpass/quiz/set"
)

// The formats besides those of sheets on paper.
const (
	formatCodes = "codes"
	formatQTI3  = "qti3"
	formatQTI2  = "qti2"
)

// codeList is the file beside the sheets that says who has which.
const codeList = "codes.csv"

// readFormats reads "pdf,html".
func readFormats(text string, more ...string) ([]string, error) {
	var known []string
	for _, f := range handout.Formats() {
		known = append(known, f.Name)
	}
	known = append(known, more...)
	var formats []string
	for _, name := range strings.Split(text, ",") {
		name = strings.TrimSpace(name)
		if !slices.Contains(known, name) {
			return nil, usage("--format %q: give %s, with commas between them", name, strings.Join(known, ", "))
		}
		if !slices.Contains(formats, name) {
			formats = append(formats, name)
		}
	}
	return formats, nil
}

func (a *app) setMake() *cobra.Command {
	var f setFlags
	var choiceOnly bool
	cmd := &cobra.Command{
		Use:   "make BLUEPRINT",
		Short: "Make the sheets of a set: each apprentice has their own numbers",
		Args:  exactly(1, "a blueprint"),
		RunE: func(_ *cobra.Command, args []string) error {
			formats, err := readFormats(f.formats, formatCodes, formatQTI3, formatQTI2)
			if err != nil {
				return err
			}
			d, err := a.openDesk(args[0], &f, true)
			if err != nil {
				return err
			}
			lms, what := isPackage(formats[0]), "-sheets"
			if lms {
				what = "-package"
			}
			dir := cmp.Or(f.out, d.maker.Blueprint.Set+what)
			if files.Holds(dir, keyFiles, feedbackFiles, markFiles) {
				return usage("%s has a key in it; a key never travels with its sheets: give another --out", dir)
			}
			if slices.ContainsFunc(formats, func(f string) bool { return isPackage(f) != lms }) {
				return usage("a package holds all right answers, so it never lies beside sheets: make %s by itself, with another --out", strings.Join(formats, ","))
			}
			return d.makeSheets(dir, formats, choiceOnly, f.replace)
		},
	}
	f.add(cmd)
	f.addOut(cmd)
	cmd.Flags().StringVar(&f.formats, "format", "pdf", "pdf, html, text, codes (for the screen), qti3, qti2 (for a learning system)")
	cmd.Flags().BoolVar(&choiceOnly, "choice-only", false, "QTI with single choice alone, for importers that take nothing else")
	return cmd
}

// isPackage reports whether a format is for a learning system.
func isPackage(format string) bool { return format == formatQTI3 || format == formatQTI2 }

// makeSheets makes sheets in all formats asked for.
func (d *desk) makeSheets(dir string, formats []string, choiceOnly, replace bool) error {
	out := files.Stage(dir)
	defer out.Rollback()
	papers := d.papers(out, "sheets", len(d.class), formats, nil)
	d.warnOfLetters(formats)
	codes, lms := slices.Contains(formats, formatCodes), slices.ContainsFunc(formats, isPackage)
	if lms && len(d.class) > perDocument {
		return usage("a QTI package has one question for each apprentice and place; %d are too many: give --forms 10, and the learning system draws one of ten", len(d.class))
	}
	var forms [][]set.Item
	sheetOf := set.ProblemCodes{}
	same := set.NewSameAnswers()
	err := d.each(func(who set.Apprentice, items []set.Item) error {
		same.Add(items)
		if len(papers) > 0 {
			sheet, err := d.printer.Sheet(who, items)
			if err != nil {
				return err
			}
			if err := papers.each(func(w handout.Writer) error { return w.Sheet(sheet) }); err != nil {
				return err
			}
		}
		if lms {
			forms = append(forms, items)
		}
		if codes {
			if err := sheetOf.Add(d.maker.Code(who.ID), items); err != nil {
				return err
			}
			return out.Write("codes/"+d.maker.Code(who.ID)+".txt", func(w io.Writer) error { return d.writeCodes(w, items) })
		}
		return nil
	})
	if err != nil {
		return err
	}
	if err := papers.close(); err != nil {
		return err
	}
	for name, version := range map[string]qti.Version{formatQTI3: qti.V30, formatQTI2: qti.V21} {
		if slices.Contains(formats, name) {
			if err := out.Write(name+".zip", func(w io.Writer) error { return qti.Write(w, d.printer.Package(forms, version, choiceOnly)) }); err != nil {
				return err
			}
		}
	}
	if !lms {
		if err := out.Write(codeList, func(w io.Writer) error { return d.maker.WriteCodes(w, d.class) }); err != nil {
			return err
		}
	}
	if err := d.keep(out, replace, sheetFiles, codeFiles); err != nil {
		return err
	}
	if lms {
		fmt.Fprintln(d.app.err, d.say("set-qti-key"))
	}
	for _, n := range same.Shared() {
		fmt.Fprintln(d.app.err, d.say("set-same", "n", n))
	}
	return d.done("set-made", len(d.class), dir)
}

// writeCodes writes the questions of one apprentice as problem codes, for the screen.
func (d *desk) writeCodes(w io.Writer, items []set.Item) error {
	if _, err := fmt.Fprintf(w, "# %s\n", d.maker.Blueprint.Title); err != nil {
		return err
	}
	if d.maker.Blueprint.Sure {
		if _, err := fmt.Fprintln(w, sureMark); err != nil {
			return err
		}
	}
	for _, it := range items {
		if _, err := fmt.Fprintln(w, it.Problem.Code); err != nil {
			return err
		}
	}
	return nil
}

// warnOfLetters says which names the letters of the PDF can't print.
func (d *desk) warnOfLetters(formats []string) {
	if !slices.Contains(formats, "pdf") {
		return
	}
	for _, who := range d.class {
		if missing := handout.Missing(who.Name); len(missing) > 0 {
			fmt.Fprintln(d.app.err, d.say("set-letters", "letters", string(missing), "name", who.Name))
		}
	}
}
