package desk

import (
	"context"
	"fmt"
	"path/filepath"

	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/set"
)

// markFolder writes marks as CSV and JSON, and what each apprentice is told.
type markFolder struct {
	rows     *set.MarksCSV
	object   *set.MarksJSON
	waiting  *set.WaitingCSV
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
		err = m.keep(out, replace, feedbackFiles)
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

func (m *marking) newMarkFolder(out *files.Staged, formats []string) (*markFolder, error) {
	table, endTable, err := out.Create("marks.csv")
	if err != nil {
		return nil, err
	}
	object, endObject, err := out.Create("marks.json")
	if err != nil {
		return nil, err
	}
	list, endList, err := out.Create(waitingList)
	if err != nil {
		return nil, err
	}
	f := &markFolder{rows: set.NewMarksCSV(table)}
	if f.waiting, err = set.NewWaitingCSV(list); err != nil {
		return nil, err
	}
	if f.object, err = set.NewMarksJSON(object, m.maker.Blueprint); err != nil {
		return nil, err
	}
	f.ends = []func() error{f.rows.Close, endTable, f.object.Close, endObject, f.waiting.Close, endList}
	f.feedback = m.papers(out, "feedback", m.marker.People(), formats, nil)
	return f, nil
}

// add writes what one apprentice's answers came to.
func (f *markFolder) add(ctx context.Context, r set.Result, printer *set.Printer) error {
	f.marked++
	if err := f.rows.Add(r); err != nil {
		return err
	}
	if err := f.waiting.Add(r); err != nil {
		return err
	}
	if err := f.object.Add(r); err != nil || !r.Handed {
		return err
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
