package desk

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"time"

	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/set"
)

// marksWriter is a file of marks that is open.
type marksWriter interface {
	Add(set.Result) error
	Close() error
}

// markFolder writes marks, what waits and what each apprentice is told.
type markFolder struct {
	tables   []marksWriter
	feedback papers
	ends     []func() error // of the files, in order

	marked, handed, unread int
}

// writeMarks writes them all, or nothing.
func (m *marking) writeMarks(ctx context.Context, dir string, formats []string, replace bool) error {
	out := m.stage(dir)
	out.Private = true
	defer out.Rollback()
	f, err := m.newMarkFolder(out, formats)
	if err != nil {
		return err
	}
	err = m.each(ctx, func(r set.Result) error {
		m.progress(f.marked+1, m.marker.People())
		return f.add(ctx, r, m.printer)
	})
	if e := f.close(); err == nil {
		err = e
	}
	if err == nil {
		err = f.feedback.close(ctx)
	}
	if err == nil {
		err = m.keep(out, replace, feedbackFiles, markFiles)
	}
	if err != nil {
		return err
	}
	fmt.Fprintln(m.run.Out, m.say("set-marked", "n", f.marked, "handed", f.handed, "where", dir))
	if f.unread > 0 {
		fmt.Fprintln(m.run.Out, m.say("set-unread", "n", f.unread, "list", filepath.Join(dir, waitingList), "decisions", filepath.Join(dir, decisionList)))
	}
	m.tellTwice(m.run.Out)
	m.tellDecisions(m.run.Out)
	return nil
}

// tables are the files of marks that the formats ask for, by their names.
func (m *marking) tables(formats []string) []table {
	b := m.maker.Blueprint
	all := []table{
		{"marks.csv", func(w io.Writer) (marksWriter, error) { return set.NewMarksCSV(w), nil }},
		{"marks.json", func(w io.Writer) (marksWriter, error) { return set.NewMarksJSON(w, b) }},
		{waitingList, func(w io.Writer) (marksWriter, error) { return set.NewWaitingCSV(w) }},
		{"grades.csv", func(w io.Writer) (marksWriter, error) { return set.NewGradesCSV(w) }},
	}
	if slices.Contains(formats, formatXLSX) {
		all = append(all, table{"marks.xlsx", func(w io.Writer) (marksWriter, error) { return set.NewMarksWorkbook(w) }})
	}
	if slices.Contains(formats, formatRoster) {
		date := cmp.Or(b.Date, time.Now().Format(time.DateOnly))
		all = append(all, table{"results.csv", func(w io.Writer) (marksWriter, error) { return set.NewOneRosterResults(w, b.Set, date) }})
	}
	return all
}

// table is a file of marks before it is begun.
type table struct {
	name  string
	begin func(io.Writer) (marksWriter, error)
}

func (m *marking) newMarkFolder(out *files.Staged, formats []string) (*markFolder, error) {
	f := &markFolder{feedback: m.papers(out, "feedback", m.marker.People(), formats, nil)}
	for _, t := range m.tables(formats) {
		file, end, err := out.Create(t.name)
		if err != nil {
			return nil, err
		}
		w, err := t.begin(file)
		if err != nil {
			return nil, err
		}
		f.tables = append(f.tables, w)
		f.ends = append(f.ends, w.Close, end)
	}
	return f, nil
}

// add writes what one apprentice's answers came to.
func (f *markFolder) add(ctx context.Context, r set.Result, printer *set.Printer) error {
	f.marked++
	for _, t := range f.tables {
		if err := t.Add(r); err != nil {
			return err
		}
	}
	if !r.Handed {
		return nil
	}
	f.handed++
	f.unread += r.Open
	feedback := printer.Feedback(r)
	return f.feedback.each(ctx, func(w handout.Writer) error { return w.Report(feedback) })
}

// close ends the files, all whatever happens.
func (f *markFolder) close() (err error) {
	for _, end := range f.ends {
		if e := end(); err == nil {
			err = e
		}
	}
	return err
}
