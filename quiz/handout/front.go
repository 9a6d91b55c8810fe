package handout

import (
	"errors"
	"fmt"
	"slices"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/drawing"
)

// writer is one format. It gets only cleaned texts, and nothing after an error.
type writer interface {
	sheet(s Sheet) error
	key(k Key) error
	tally(title string, items []string) error
	report(r Report) error
	close() error
}

// front stands before each format: it cleans what comes in and keeps the first error.
type front struct {
	to    writer
	clean cleaner
	parts int
	err   error
}

var (
	errClosed = errors.New("the document is closed: begin another one")
	errEmpty  = errors.New("the document is empty: give a sheet, a key, a tally or a report before closing it")
)

func (f *front) Sheet(s Sheet) error {
	return f.do(func() error {
		for _, it := range s.Items {
			if err := sized(it.Drawing, fmt.Sprintf("item %d", it.Number)); err != nil {
				return err
			}
		}
		return f.to.sheet(f.clean.sheet(s))
	})
}

func (f *front) Key(k Key) error {
	return f.do(func() error { return f.to.key(f.clean.key(k)) })
}

func (f *front) Tally(title string, items []string) error {
	return f.do(func() error { return f.to.tally(f.clean.line(title), f.clean.lines(items)) })
}

func (f *front) Report(r Report) error {
	return f.do(func() error {
		for i, p := range r.Parts {
			where := fmt.Sprintf("part %d", i+1)
			if err := sized(p.Drawing, where); err != nil {
				return err
			}
			if err := even(p.Table, where); err != nil {
				return err
			}
		}
		return f.to.report(f.clean.report(r))
	})
}

// sized tells a drawing that can't be laid out.
func sized(d *drawing.Drawing, where string) error {
	if d == nil || d.Width > 0 && d.Height > 0 {
		return nil
	}
	return fmt.Errorf("the drawing %s of %s is %g by %g: give it a size", calc.Quoted(d.Title), where, d.Width, d.Height)
}

// even tells a table with a cell that stands in no column, or a column without one.
func even(t *Table, where string) error {
	if t == nil {
		return nil
	}
	if len(t.Columns) == 0 {
		return fmt.Errorf("the table of %s has no columns: name them", where)
	}
	for i, cells := range t.Rows {
		if len(cells) != len(t.Columns) {
			return fmt.Errorf("row %d of the table of %s has %d cells: give %d, one for each column", i+1, where, len(cells), len(t.Columns))
		}
	}
	return nil
}

func (f *front) do(part func() error) error {
	if f.err == nil {
		f.parts++
		f.err = part()
	}
	return f.err
}

func (f *front) Close() error {
	if f.err == nil && f.parts == 0 {
		f.err = errEmpty
	}
	if f.err != nil {
		return f.err
	}
	f.err = errClosed
	if err := f.to.close(); err != nil {
		f.err = err
		return err
	}
	return nil
}

// mostTallyColumns still leave a cell wide enough to tick.
const mostTallyColumns = 10

// checked returns the options cleaned, or what is wrong with them.
func (o Options) checked(c cleaner) (Options, error) {
	if o.Paper != A4 && o.Paper != Letter {
		return o, &calc.InputError{What: "paper", Got: calc.Quoted(string(o.Paper)), Want: string(A4) + " or " + string(Letter)}
	}
	if !slices.Contains([]Layout{"", Compact, Roomy}, o.Layout) {
		return o, &calc.InputError{What: "layout", Got: calc.Quoted(string(o.Layout)), Want: string(Compact) + " or " + string(Roomy)}
	}
	if n := len(o.Words.TallyColumns); n > mostTallyColumns {
		return o, fmt.Errorf("the tally has %d columns: give %d at most", n, mostTallyColumns)
	}
	if _, unknown := pageWords(o.Words.Page, 1, 1); len(unknown) > 0 {
		return o, &calc.InputError{What: "words for a page", Got: calc.Quoted(o.Words.Page), Want: "${page} and ${of} and no other name"}
	}
	if o.Date.IsZero() {
		o.Date = Made
	}
	o.Title, o.Words = c.line(o.Title), c.words(o.Words)
	return o, nil
}

// pageWords fills in the line that counts the pages.
func pageWords(text string, page, of int) (filled string, unknown []string) {
	return content.Fill(text, func(name string) (string, bool) {
		switch name {
		case "page":
			return fmt.Sprint(page), true
		case "of":
			return fmt.Sprint(of), true
		}
		return "", false
	})
}
