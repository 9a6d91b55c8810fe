package desk

import (
	"context"
	"fmt"

	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
)

// perDocument is how many sheets one document holds: a document is in memory until it is
// written.
const perDocument = 50

// documents writes sheets or keys into documents of one format, a new one when the last
// is full.
type documents struct {
	desk   *desk
	out    *files.Staged
	format handout.Format
	base   string // sheets or key
	many   bool   // there will be more than one
	n      int    // sheets in the one that is open
	number int
	w      handout.Writer
	end    func() error
	last   func(handout.Writer) error // before each is closed
}

// papers are the documents of all formats that are for paper.
type papers []*documents

// papers begins them for at most so many sheets; formats that are not for paper are passed
// over. last is written before each document is closed; nil writes nothing.
func (d *desk) papers(out *files.Staged, base string, sheets int, formats []string, last func(handout.Writer) error) papers {
	var all papers
	for _, name := range formats {
		if f, err := handout.FormatNamed(name); err == nil {
			all = append(all, &documents{desk: d, out: out, format: f, base: base, many: sheets > perDocument, last: last})
		}
	}
	return all
}

// each writes one more sheet into every format.
func (p papers) each(ctx context.Context, write func(handout.Writer) error) error {
	for _, x := range p {
		w, err := x.next(ctx)
		if err == nil {
			err = x.desk.unlessStopped(ctx, func() error { return write(w) })
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (p papers) close(ctx context.Context) error {
	for _, x := range p {
		if err := x.close(ctx); err != nil {
			return err
		}
	}
	return nil
}

// next returns the writer for one more sheet.
func (x *documents) next(ctx context.Context) (handout.Writer, error) {
	if x.w != nil && x.n == perDocument {
		if err := x.close(ctx); err != nil {
			return nil, err
		}
	}
	if x.w == nil {
		x.number++
		name := x.base
		if x.many {
			name = fmt.Sprintf("%s-%03d", x.base, x.number)
		}
		file, end, err := x.out.Create(name + x.format.Ending)
		if err != nil {
			return nil, err
		}
		w, err := x.format.New(file, x.desk.printer.Options(x.desk.maker.Blueprint.Title))
		if err != nil {
			return nil, err
		}
		x.w, x.end, x.n = w, end, 0
	}
	x.n++
	return x.w, nil
}

func (x *documents) close(ctx context.Context) error {
	if x.w == nil {
		return nil
	}
	w := x.w
	err := x.desk.unlessStopped(ctx, func() error {
		if x.last != nil {
			if err := x.last(w); err != nil {
				return err
			}
		}
		return w.Close()
	})
	if err == nil {
		err = x.end()
	}
	x.w = nil
	return err
}
