package handout

import (
	"errors"
	"fmt"

	"scratchpass/calc"
	"scratchpass/content"
)

// writer is one format. It gets only cleaned texts, and nothing after an error.
type writer interface {
	sheet(s Sheet) error
	key(k Key) error
	tally(title string, items []string) error
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
	errEmpty  = errors.New("the document is empty: give a sheet, a key or a tally before closing it")
)

func (f *front) Sheet(s Sheet) error {
	return f.do(func() error {
		for _, it := range s.Items {
			if d := it.Drawing; d != nil && !(d.Width > 0 && d.Height > 0) {
				return fmt.Errorf("the drawing %s of item %d is %g by %g: give it a size", calc.Quoted(d.Title), it.Number, d.Width, d.Height)
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
