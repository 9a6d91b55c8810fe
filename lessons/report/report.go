// Package report turns reports of a class into pages and pages into what is printed.
package report

import (
	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/handout"
)

// Page is a report as a page.
func Page(r handout.Report) page.Page {
	p := page.Page{page.Heading{Text: r.Title}}
	for _, fact := range r.Facts {
		p = append(p, page.Paragraph{Text: fact})
	}
	for _, part := range r.Parts {
		p = append(p, page.Gap{}, page.Heading{Text: part.Heading})
		for _, line := range part.Lines {
			p = append(p, page.Item{Text: line})
		}
		if part.Drawing != nil {
			p = append(p, page.Figure{Pictures: []drawing.Drawing{*part.Drawing}, Twin: part.Drawing.Twin})
		}
		if part.Table != nil {
			p = append(p, page.Table{Columns: part.Table.Columns, Rows: part.Table.Rows})
		}
	}
	return append(p, page.Gap{}, page.Caution{Text: r.Note})
}

// Printed is a page as a report for paper: its first heading is the title, each further
// one begins a part, and figures stand as their twins.
func Printed(p page.Page, owner, note string) handout.Report {
	r := handout.Report{Owner: owner, Note: note}
	for _, b := range p {
		heading, ok := b.(page.Heading)
		switch {
		case ok && r.Title == "":
			r.Title = heading.Text
		case ok:
			r.Parts = append(r.Parts, handout.Part{Heading: heading.Text})
		default:
			if len(r.Parts) == 0 {
				r.Parts = append(r.Parts, handout.Part{})
			}
			last := &r.Parts[len(r.Parts)-1]
			for _, l := range text.Lines(page.Page{b}, true) {
				if l.Role != text.Picture && l.Text != "" && l.Text != "\n" {
					last.Lines = append(last.Lines, l.Text)
				}
			}
		}
	}
	return r
}
