package set

import (
	"fmt"
	"slices"

	"scratchpass/quiz/handout"
)

// gridColumns is how many questions stand side by side in one grid.
const gridColumns = 12

// GridRow are the answers of one apprentice's sheet, as they stand in the marking grid:
// name or form, code, and the answers by their printed numbers.
func (p *Printer) GridRow(a Apprentice, items []Item) []string {
	row := []string{a.Name, p.maker.Code(a.ID)}
	if a.Form != "" {
		row[0] = a.Form
	}
	for _, it := range items {
		row = append(row, it.Words.KeyNumber(it.Problem))
	}
	return row
}

// Grid is the marking grid: a row an apprentice, a column a question, in each cell the
// answer. What else is right stands in the full key.
func (p *Printer) Grid(rows [][]string) handout.Report {
	b := p.maker.Blueprint
	r := handout.Report{Title: p.Say("set-grid", "title", b.Title), Owner: p.Say("set-key"), Facts: []string{p.Say("set-grid-how")}, Wide: true}
	who := []string{p.Say("set-name"), p.Say("set-code")}
	of := p.gridQuestions()
	for from := 0; from < len(of); from += gridColumns {
		to := min(from+gridColumns, len(of))
		table := &handout.Table{Columns: slices.Concat(who, of[from:to])}
		for _, row := range rows {
			table.Rows = append(table.Rows, slices.Concat(row[:len(who)], row[len(who)+from:len(who)+to]))
		}
		r.Parts = append(r.Parts, handout.Part{Table: table})
	}
	return r
}

// gridQuestions are the names of the columns: the number of a question, and how many
// points it is worth where that is the same for all and not one.
func (p *Printer) gridQuestions() []string {
	var names []string
	for _, s := range p.maker.Blueprint.Slots {
		for range s.Count {
			name := fmt.Sprint(len(names) + 1)
			if s.Points != 1 && !p.maker.Blueprint.Rules.Shuffle {
				name = p.Say("set-grid-points", "n", name, "points", points(s.Points))
			}
			names = append(names, name)
		}
	}
	return names
}
