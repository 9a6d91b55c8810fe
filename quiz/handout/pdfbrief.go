package handout

import (
	"regexp"
	"strings"
)

// Measures of a brief report.
const (
	briefAside = 150 * point // how wide a drawing is, unless its labels need more
	briefGap   = 10 * point
)

// briefs are the types of a brief report and how high its drawings are, from roomy to tight.
var briefs = []struct{ size, figure int }{{10 * point, 84 * point}, {950, 78 * point}, {9 * point, 66 * point}, {850, 60 * point}}

// brief is a report whose drawings stand beside their lines. One that half a page holds
// takes no more, and none begins a page for a few lines.
func (p *pdf) brief(r Report) error {
	sec := section{mark: joined(": ", r.Title, r.Owner), note: r.Note, owner: r.Owner}
	half, full := p.halfPage()-p.ticketFoot(r.Note), p.paper.height-2*margin-p.footHeight(r.Note)
	var all [][]block
	fewest := 0
	for _, b := range briefs {
		blocks := p.briefBlocks(r, b.size, b.figure)
		if pages := paginate(blocks, half); len(pages) == 1 {
			return p.ticket(sec, []set{{rows: pages[0]}})
		}
		all = append(all, blocks)
		fewest = len(paginate(blocks, full))
	}
	for _, sec.blocks = range all {
		if len(paginate(sec.blocks, full)) <= fewest {
			break
		}
	}
	return p.write(sec)
}

// briefBlocks lays a brief report out in a type, its drawings so high at most.
func (p *pdf) briefBlocks(r Report, size, figure int) []block {
	body := face{size: size}
	head := block{}
	head.add(p.lines(margin, r.Title, p.paper.inner(), title)...)
	head.add(p.lines(margin, joined(" ", r.Facts...), p.paper.inner(), body)...)
	blocks := []block{head}
	for _, part := range r.Parts {
		blocks = append(blocks, p.briefPart(part, body, figure)...)
	}
	return blocks
}

// briefPart is one part; a table in it has the width of the page.
func (p *pdf) briefPart(part Part, body face, figure int) []block {
	const air = 8 * point // that a picture has above it and below it
	width := p.paper.inner()
	b := block{gap: briefGap}
	aside := row{}
	if d := part.Drawing; d != nil {
		figure = max(figure, readable(d))
		scale, _ := scaled(d, min(max(briefAside, readableWidth(d)), p.paper.inner()*9/20), figure)
		wide := hundredthsOf(d.Width * scale)
		width -= wide + 2*columnGap
		aside = p.picture(d, p.paper.right()-wide, wide, figure)
	}
	if part.Heading != "" {
		b.add(p.lines(margin, part.Heading, width, face{body.size, true})...)
	}
	for _, line := range flowing(part.Lines) {
		b.add(p.lines(margin, line, width, body)...)
	}
	if aside.paint != nil {
		if short := aside.height - 2*air - heightOf(b.rows); short > 0 || len(b.rows) == 0 {
			b.add(space(max(short, 0)))
		}
		first := b.rows[0].paint
		b.rows[0].paint = func(top int) { aside.paint(top - air); first(top) }
	}
	if part.Table == nil {
		return []block{b}
	}
	var f flow
	f.hold(b.gap, b.rows...)
	p.table(&f, part.Table, tableGap)
	return f.all()
}

// ofAnOrder is how a step of an order begins.
var ofAnOrder = regexp.MustCompile(`^[0-9]+\) `)

// flowing runs sentences together; the lines of a working, which end in no full stop, and the
// steps of an order stay by themselves.
func flowing(lines []string) []string {
	var out []string
	sentence := false // whether the last one is a sentence
	for _, line := range lines {
		is := strings.HasSuffix(line, ".") && !ofAnOrder.MatchString(line)
		if last := len(out) - 1; is && sentence {
			out[last] += " " + line
		} else {
			out = append(out, line)
		}
		sentence = is
	}
	return out
}
