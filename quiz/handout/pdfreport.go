package handout

// Measures of a report.
const (
	partGap      = 18 * point // above a heading
	paragraphGap = 4 * point
	tableGap     = 6 * point
)

// setting is how large the type of a report is, and how wide its gaps are.
type setting struct {
	fact, heading, line, cell, head face
	part, paragraph, table, side    int // gaps; side is above and below a cell
	picture                         int // the share of the page's height that a drawing may have: one in so many
}

// compactType is the type of a page that is read at arm's length beside the lathe.
const compactType = 15 * point / 2

var (
	snugSetting = setting{face{850, false}, face{10 * point, true}, face{10 * point, false}, face{850, false}, face{850, true},
		12 * point, 3 * point, 4 * point, 2 * point, 2}
	usualSetting   = setting{small, strong, regular, small, smaller, partGap, paragraphGap, tableGap, cellSide, 2}
	compactSetting = setting{face{compactType, false}, face{9 * point, true}, face{compactType, false}, face{compactType, false}, face{compactType, true},
		5 * point, 1 * point, 3 * point, 1 * point, 9}
)

func (p *pdf) report(r Report) error {
	p.set = usualSetting
	if r.Compact {
		p.set = compactSetting
		defer func() { p.set = usualSetting }()
	}
	if r.Wide && !p.wide {
		p.turned()
		defer p.turned()
	}
	if err := p.leavesRoom(r.Note); err != nil {
		return err
	}
	if r.Brief {
		return p.brief(r)
	}
	sec := section{mark: joined(": ", r.Title, r.Owner), blocks: p.reportBlocks(r), note: r.Note, owner: r.Owner}
	if !r.Compact && !r.Wide { // no page for the little that a closer setting has room for
		high := p.paper.height - 2*margin - p.footHeight(r.Note)
		p.set = snugSetting
		if snug := p.reportBlocks(r); len(paginate(snug, high)) < len(paginate(sec.blocks, high)) {
			sec.blocks = snug
		}
		p.set = usualSetting
	}
	return p.write(sec)
}

// reportBlocks lays a report out in the setting that there is.
func (p *pdf) reportBlocks(r Report) []block {
	var f flow
	f.hold(0, p.lines(margin, r.Title, p.paper.inner(), title)...)
	f.hold(paragraphGap)
	for _, fact := range r.Facts {
		f.put(0, p.lines(margin, fact, p.paper.inner(), p.set.fact), nil)
	}
	for _, part := range r.Parts {
		p.part(&f, part)
	}
	return f.all()
}

func (p *pdf) part(f *flow, part Part) {
	gap := p.set.part
	if part.Heading != "" {
		f.hold(gap, p.lines(margin, part.Heading, p.paper.inner(), p.set.heading)...)
		gap = p.set.paragraph
	}
	for i, line := range part.Lines {
		rows := p.lines(margin, line, p.paper.inner(), p.set.line)
		if last := i == len(part.Lines)-1; last && len(rows) < 4 && (part.Table != nil || part.Drawing != nil) {
			f.hold(gap, rows...) // it leads to what stands below it
			rows = nil
		}
		for _, run := range runs(rows, p.paper.height/5) {
			f.put(gap, run, nil)
			gap = 0
		}
		gap = p.set.paragraph
	}
	if part.Table != nil {
		p.table(f, part.Table, max(gap, p.set.table))
		gap = p.set.table
	}
	if d := part.Drawing; d != nil {
		if d.Title != "" && d.Title != part.Heading {
			f.hold(max(gap, p.set.table), p.lines(margin, d.Title, p.paper.inner(), p.set.head)...)
			gap = 0
		}
		f.put(gap, []row{p.picture(d, margin, p.paper.inner(), p.paper.height/p.set.picture)}, nil)
	}
}

// turned lays what follows across the paper's long side, or again along it.
func (p *pdf) turned() {
	p.wide = !p.wide
	p.paper = area{p.paper.height, p.paper.width}
}

// cellFaces are the types of a table's names and of its cells.
func (p *pdf) cellFaces() (name, cell face) {
	if p.wide {
		const tight = 8 * point
		return face{tight, true}, face{size: tight}
	}
	return p.set.head, p.set.cell
}

// cellAir is the free height of a cell, above and below its text together.
func (p *pdf) cellAir() int {
	if p.wide {
		return cellSide
	}
	return 2 * p.set.side
}

// table lays rows out in a grid; one with too many columns for that is told row by row.
func (p *pdf) table(f *flow, t *Table, gap int) {
	widths, ok := shared(p.spans(t), p.paper.inner())
	if !ok {
		for _, lines := range t.records() {
			var rows []row
			for _, line := range lines {
				rows = append(rows, p.hung(margin, columnGap, "", line, p.paper.inner(), p.set.cell)...)
			}
			for _, run := range runs(rows, p.paper.height/5) {
				f.put(gap, run, nil)
				gap = 0
			}
			gap = p.set.table
		}
		return
	}
	g := grid{edges: []int{margin}, right: t.Numbers()}
	for i, width := range widths {
		g.edges = append(g.edges, g.edges[i]+width)
	}
	var head, again []row
	name, cell := p.cellFaces()
	if t.Named() {
		head = g.rows(p, t.Columns, name, 0)
	}
	if len(t.Rows) == 0 {
		f.put(gap, head, nil)
	}
	f.hold(gap, head...)
	for i, cells := range t.Rows {
		rows := g.rows(p, cells, cell, 0)
		first, lastButOne := i == 0, i == len(t.Rows)-2
		if len(t.Rows) > 1 && (first || lastButOne) && heightOf(rows) <= p.paper.height/10 {
			f.hold(0, rows...) // so that no row stands alone on a page
			continue
		}
		for _, run := range runs(rows, p.paper.height/5) {
			f.put(0, run, again)
			again = head
		}
	}
}

// spans are how wide the columns of a table may be. A number is never broken, and only
// a word that is wider than a third of the page is.
func (p *pdf) spans(t *Table) []span {
	spans := make([]span, len(t.Columns))
	longest := func(text string, measure func(string) int) int {
		wide := 0
		for _, piece := range pieces(text) {
			wide = max(wide, min(measure(piece), p.paper.inner()/3))
		}
		return wide + 2*cellSide
	}
	head, cell := p.cellFaces()
	measure := p.measure(head)
	for i, name := range t.Columns {
		wide := longest(name, measure)
		spans[i] = span{wide, wide, measure(name) + 2*cellSide}
	}
	measure = p.measure(cell)
	for i, numbers := range t.Numbers() {
		s := &spans[i]
		for _, cells := range t.Rows {
			s.want = max(s.want, measure(cells[i])+2*cellSide)
			s.least = max(s.least, longest(cells[i], measure))
		}
		if numbers {
			s.least = s.want
		}
	}
	return spans
}
