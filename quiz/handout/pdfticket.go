package handout

// halfMargin is from what is printed to the line where a page is cut in two.
const halfMargin = 22 * point

// halfTop is the margin of a half page at the edge of the paper.
const halfTop = 36 * point

// halfPage is how high the printed part of a half page is.
func (p *pdf) halfPage() int { return p.paper.height/2 - halfTop - halfMargin }

// ticket puts a section that half a page holds below another one, or on a page that the
// next may share.
func (p *pdf) ticket(s section, sets []set) error {
	top := halfTop
	if p.upper {
		top = p.paper.height/2 + halfMargin
		p.upper = false
	} else {
		p.leaf()
		p.page()
		p.cut()
		p.upper = true
	}
	p.use(regular)
	p.doc.Bookmark(s.mark, 0, pt(top-halfTop))
	p.body(sets, top)
	top += p.halfPage() - p.ticketFoot(s.note)
	if p.ticketFoot(s.note) < p.footHeight(s.note) {
		s.note, s.owner = "", s.note
	}
	p.foot(s, top, 1, 1)
	return p.doc.Error()
}

// ticketFoot is how high the foot of a half page is. A short caution stands beside the
// page's number there: whose it is stands at its top, on the same page.
func (p *pdf) ticketFoot(note string) int {
	count, _ := pageWords(p.words.Page, 1, 1)
	if measure := p.measure(small); note != "" && measure(note)+measure(count)+columnGap <= p.paper.inner() {
		return p.footHeight("")
	}
	return p.footHeight(note)
}

// cut prints the line where a page is cut in two.
func (p *pdf) cut() {
	middle := p.paper.height / 2
	p.text(margin/2, middle-small.leading()/2, "✂", small)
	p.doc.SetDashPattern([]float64{3, 3}, 0)
	p.line(margin/2+14*point, middle, p.paper.width-margin/2, middle)
	p.doc.SetDashPattern(nil, 0)
}
