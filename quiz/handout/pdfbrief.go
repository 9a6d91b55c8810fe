package handout

// Measures of a brief report.
const (
	briefType   = 950
	briefFigure = 78 * point  // how high a drawing is, unless its labels need more
	briefAside  = 150 * point // how wide one is
	briefGap    = 11 * point
)

// brief is a report whose drawings stand beside their lines. One that half a page holds
// takes no more.
func (p *pdf) brief(r Report) error {
	body := face{size: briefType}
	head := block{}
	head.add(p.lines(margin, r.Title, p.paper.inner(), title)...)
	head.add(p.lines(margin, joined(" ", r.Facts...), p.paper.inner(), body)...)
	blocks := []block{head}
	for _, part := range r.Parts {
		blocks = append(blocks, p.briefPart(part, body)...)
	}
	sec := section{mark: joined(": ", r.Title, r.Owner), blocks: blocks, note: r.Note, owner: r.Owner}
	if pages := paginate(blocks, p.halfPage()-p.ticketFoot(r.Note)); len(pages) == 1 {
		return p.ticket(sec, []set{{rows: pages[0]}})
	}
	return p.write(sec)
}

// briefPart is one part; a table in it has the width of the page.
func (p *pdf) briefPart(part Part, body face) []block {
	width := p.paper.inner()
	b := block{gap: briefGap}
	if part.Heading != "" {
		b.add(p.lines(margin, part.Heading, width, face{briefType, true})...)
	}
	aside := row{}
	if d := part.Drawing; d != nil {
		figure := max(briefFigure, readable(d))
		scale, _ := scaled(d, min(max(briefAside, readableWidth(d)), p.paper.inner()*9/20), figure)
		wide := hundredthsOf(d.Width * scale)
		width -= wide + 2*columnGap
		aside = p.picture(d, p.paper.right()-wide, wide, figure)
	}
	from := len(b.rows)
	for _, line := range part.Lines {
		b.add(p.lines(margin, line, width, body)...)
	}
	if len(b.rows) == from && aside.paint != nil {
		b.add(space(0))
	}
	if short := aside.height - heightOf(b.rows[from:]); short > 0 {
		b.add(space(short))
	}
	if aside.paint != nil {
		first := b.rows[from].paint
		b.rows[from].paint = func(top int) { aside.paint(top - 4*point); first(top) }
	}
	if part.Table == nil {
		return []block{b}
	}
	var f flow
	f.hold(b.gap, b.rows...)
	p.table(&f, part.Table, tableGap)
	return f.all()
}
