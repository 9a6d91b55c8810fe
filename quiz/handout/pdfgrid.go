package handout

// cellSide is left free at either side of a cell of a grid.
const cellSide = 4 * point

// grid is a table with lines between its cells.
type grid struct {
	edges []int  // the places of its upright lines
	right []bool // columns whose cells end at the right, as numbers do; nil for none
}

// rows is one row of the grid: a strip of the page for each line of its highest cell.
func (g grid) rows(p *pdf, cells []string, f face, least int) []row {
	texts := make([][]string, len(cells))
	lines := 1
	for i, cell := range cells {
		texts[i] = p.wrap(cell, g.edges[i+1]-g.edges[i]-2*cellSide, f)
		lines = max(lines, len(texts[i]))
	}
	var rows []row
	for n := range lines {
		rows = append(rows, row{f.leading(), func(top int) {
			for i, text := range texts {
				switch {
				case n >= len(text):
				case g.right != nil && g.right[i]:
					p.textRight(g.edges[i+1]-cellSide, top, text[n], f)
				default:
					p.text(g.edges[i]+cellSide, top, text[n], f)
				}
			}
		}})
	}
	pad := max(least-lines*f.leading(), p.cellAir())
	rows = append(append([]row{space(pad / 2)}, rows...), space(pad-pad/2))
	last := len(g.edges) - 1
	framed := p.strips(g.edges[0], g.edges[last], rows)
	for i, r := range framed {
		framed[i].paint = func(top int) {
			for _, x := range g.edges[1:last] {
				p.line(x, top, x, top+r.height)
			}
			r.paint(top)
		}
	}
	return framed
}
