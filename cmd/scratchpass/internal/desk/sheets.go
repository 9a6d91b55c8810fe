package desk

import (
	"context"
	"fmt"
	"io"
	"slices"

	"scratchpass/cmd/scratchpass/internal/codefile"
	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/set"
)

// codeList is the file beside the sheets that says who has which.
const codeList = "codes.csv"

// writeSheets writes each apprentice's questions on paper and as codes for the screen, as
// the formats ask for, and returns which questions have one answer for all.
func (d *desk) writeSheets(ctx context.Context, out *files.Staged, formats []string) (*set.SameAnswers, error) {
	papers := d.papers(out, "sheets", len(d.class), formats, nil)
	d.warnOfLetters(formats)
	codes := slices.Contains(formats, formatCodes)
	sheetOf := set.ProblemCodes{}
	same := set.NewSameAnswers()
	err := d.each(ctx, func(who set.Apprentice, items []set.Item) error {
		same.Add(items)
		if slices.Contains(formats, formatFields) {
			if err := d.writeFields(out, who, items); err != nil {
				return err
			}
		}
		if err := d.writeSheet(ctx, papers, who, items); err != nil || !codes {
			return err
		}
		return d.writeCodes(out, sheetOf, who, items)
	})
	if err != nil {
		return nil, err
	}
	if err := papers.close(ctx); err != nil {
		return nil, err
	}
	return same, out.WritePrivate(codeList, func(w io.Writer) error { return d.maker.WriteCodes(w, d.class) })
}

// writeSheet writes the sheet of one apprentice.
func (d *desk) writeSheet(ctx context.Context, papers papers, who set.Apprentice, items []set.Item) error {
	if len(papers) == 0 {
		return nil
	}
	sheet, err := d.printer.Sheet(who, items)
	if err != nil {
		return err
	}
	return papers.each(ctx, func(w handout.Writer) error { return w.Sheet(sheet) })
}

// writeFields writes the sheet of one apprentice as a file with fields to fill in. It is
// that apprentice's alone until it is handed out.
func (d *desk) writeFields(out *files.Staged, who set.Apprentice, items []set.Item) error {
	sheet, err := d.printer.Sheet(who, items)
	if err != nil {
		return err
	}
	return out.WritePrivate("fields/"+sheet.Code+".html", func(w io.Writer) error {
		doc, err := handout.HTML(w, d.printer.FieldOptions(who))
		if err != nil {
			return err
		}
		if err := doc.Sheet(sheet); err != nil {
			return err
		}
		return doc.Close()
	})
}

// writeCodes writes the questions of one apprentice as problem codes, in a file that is
// named after the code of the sheet. A code shows its key to whoever asks: such a file is
// as private as a key until it is handed out.
func (d *desk) writeCodes(out *files.Staged, sheetOf set.ProblemCodes, who set.Apprentice, items []set.Item) error {
	sheet := d.maker.Code(who.ID)
	if err := sheetOf.Add(sheet, items); err != nil {
		return err
	}
	q := codefile.Questions{Sure: d.maker.Blueprint.Sure}
	for _, it := range items {
		q.Codes = append(q.Codes, it.Problem.Code.String())
	}
	return out.WritePrivate("codes/"+sheet+".txt", func(w io.Writer) error { return codefile.Write(w, d.maker.Blueprint.Title, q) })
}

// warnOfLetters says which names the letters of the PDF can't print.
func (d *desk) warnOfLetters(formats []string) {
	if !slices.Contains(formats, "pdf") {
		return
	}
	for _, who := range d.class {
		if missing := handout.Missing(who.Name); len(missing) > 0 {
			fmt.Fprintln(d.run.Err, d.say("set-letters", "letters", string(missing), "name", who.Name))
		}
	}
}
