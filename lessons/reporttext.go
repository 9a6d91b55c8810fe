package lessons

import (
	"strings"

	"scratchpass/quiz/handout"
)

// ReportText lays a report out for the terminal: each row of a table is a line of
// labels and values, as a screen reader wants it.
func ReportText(r handout.Report, columns int) Text {
	text := Text{{Style: Heading, Text: r.Title}}
	for _, fact := range r.Facts {
		text = append(text, Block{Text: fact})
	}
	for _, part := range r.Parts {
		text = append(text, Block{Style: Heading, Text: "\n" + part.Heading})
		for _, line := range part.Lines {
			text = append(text, Block{Text: "- " + line})
		}
		if part.Drawing != nil {
			text = append(text, Block{Style: Picture, Text: strings.Join(part.Drawing.Terminal(columns-2), "\n")}, Block{Text: part.Drawing.Twin})
		}
		if part.Table != nil {
			for _, row := range part.Table.Rows {
				line := "- " + part.Table.Columns[0] + " " + row[0]
				for i := 1; i < len(row); i++ {
					if i > 2 && row[i] == "0" { // of counts only those that are any, after the first two
						continue
					}
					line += ", " + part.Table.Columns[i] + " " + row[i]
				}
				text = append(text, Block{Text: line})
			}
		}
	}
	return append(text, Block{Style: Caution, Text: "\n" + r.Note})
}
