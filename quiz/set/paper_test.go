package set

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

var pageObject = regexp.MustCompile(`/Type /Page\b`)

// pagesOf counts the pages of a PDF of the examples, for the class that is with them.
func pagesOf(t *testing.T, blueprint, more string, write func(p *Printer, w handout.Writer, class []Apprentice, of func(string) []Item)) int {
	t.Helper()
	dir := filepath.Join("..", "..", "content", "sets")
	text, err := os.ReadFile(filepath.Join(dir, blueprint))
	if err != nil {
		t.Fatal(err)
	}
	b, err := ParseBlueprint(blueprint, []byte(string(text)+more), tasks.Set{}, func(string) (machine.Lathe, error) { return machine.InchLathe, nil })
	if err != nil {
		t.Fatal(err)
	}
	class, err := ReadRoster(filepath.Join(dir, "roster.csv"), func(Note) {})
	if err != nil || len(class) != 24 {
		t.Fatal(len(class), err)
	}
	m, err := NewMaker(b, Secret("a secret that stands in a test"), content.Shipped())
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPrinter(m, content.Shipped())
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w, err := handout.PDF(&out, p.Options("x"))
	if err != nil {
		t.Fatal(err)
	}
	write(p, w, class, func(id string) []Item { return items(t, m, id) })
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return len(pageObject.FindAll(out.Bytes(), -1))
}

// A class of 24 with 12 questions: at most 60 pages of sheets, on both papers, and a
// marking grid of a few; an exit ticket of five takes half a page each.
func TestPaperOfAClass(t *testing.T) {
	sheets := func(p *Printer, w handout.Writer, class []Apprentice, of func(string) []Item) {
		for _, who := range class {
			s, err := p.Sheet(who, of(who.ID))
			if err != nil {
				t.Fatal(err)
			}
			_ = w.Sheet(s) // the writer keeps its error
		}
	}
	grid := func(p *Printer, w handout.Writer, class []Apprentice, of func(string) []Item) {
		var rows [][]string
		for _, who := range class {
			rows = append(rows, p.GridRow(who, of(who.ID)))
		}
		_ = w.Report(p.Grid(rows))
	}
	for _, c := range []struct {
		what, blueprint, more string
		write                 func(*Printer, handout.Writer, []Apprentice, func(string) []Item)
		most                  int
	}{
		{"sheets", "first-thread.yaml", "", sheets, 60},
		{"sheets", "first-thread.yaml", "paper: Letter\n", sheets, 60},
		{"exit tickets", "exit-ticket.yaml", "", sheets, 12},
		{"exit tickets", "exit-ticket.yaml", "paper: Letter\n", sheets, 12},
		{"the grid", "first-thread.yaml", "", grid, 8},
		{"the grid", "first-thread.yaml", "paper: Letter\n", grid, 8},
		{"roomy sheets", "first-thread.yaml", "layout: roomy\n", sheets, 144},
	} {
		n := pagesOf(t, c.blueprint, c.more, c.write)
		t.Logf("%s, %s: %d pages", c.what, strings.TrimSpace(c.more), n)
		if n > c.most {
			t.Errorf("%s of %s, %s: %d pages, want %d at most", c.what, c.blueprint, c.more, n, c.most)
		}
	}
}

// The grid has each person's answers, and no more columns side by side than a page holds.
func TestGrid(t *testing.T) {
	m := maker(t, twenty(20))
	p, err := NewPrinter(m, content.Shipped())
	if err != nil {
		t.Fatal(err)
	}
	who := roster(2)
	rows := [][]string{p.GridRow(who[0], items(t, m, who[0].ID)), p.GridRow(who[1], items(t, m, who[1].ID))}
	r := p.Grid(rows)
	if len(r.Parts) != 2 || !r.Wide {
		t.Fatalf("%d parts, wide %v", len(r.Parts), r.Wide)
	}
	seen := 0
	for _, part := range r.Parts {
		for i, cells := range part.Table.Rows {
			if len(cells) != len(part.Table.Columns) || cells[1] != m.Code(who[i].ID) {
				t.Errorf("a row is %q below %q", cells, part.Table.Columns)
			}
			for _, cell := range cells[2:] {
				if cell == "" {
					t.Errorf("an empty cell in %q", cells)
				}
				seen++
			}
		}
	}
	if seen != 40 {
		t.Errorf("%d answers of 40", seen)
	}
}
