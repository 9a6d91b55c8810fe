package desk

import (
	"context"

	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
)

// grid writes the marking grid beside the keys, a piece of it for each fifty sheets.
type grid struct {
	desk   *desk
	papers papers
	rows   [][]string
}

func (d *desk) newGrid(out *files.Staged, formats []string) *grid {
	return &grid{desk: d, papers: d.papers(out, "grid", (len(d.class)+perDocument-1)/perDocument, formats, nil)}
}

// add takes the answers of one sheet.
func (g *grid) add(ctx context.Context, row []string) error {
	if g.rows = append(g.rows, row); len(g.rows) < perDocument {
		return nil
	}
	return g.piece(ctx)
}

// piece writes what was gathered.
func (g *grid) piece(ctx context.Context) error {
	if len(g.rows) == 0 {
		return nil
	}
	page := g.desk.printer.Grid(g.rows)
	g.rows = nil
	return g.papers.each(ctx, func(w handout.Writer) error { return w.Report(page) })
}

func (g *grid) close(ctx context.Context) error {
	if err := g.piece(ctx); err != nil {
		return err
	}
	return g.papers.close(ctx)
}
