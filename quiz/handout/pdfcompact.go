package handout

import (
	"sort"
	"strconv"
	"strings"
)

// between is from one column to the other: room for the numbers of the right one.
const between = 46 * point

// step is how closely a compact sheet is set.
type step struct {
	size    int // size of the questions' type
	small   int // of what to write, and of facts
	figure  int // how high a drawing is at most; below 0 so high, and none beside options; 0 for none at all
	squares int // rows of squares for the working
	gap     int // between items
}

// steps are from roomy to tight. A sheet is set as roomily as the fewest pages that hold
// it allow, so that no page is left nearly empty.
var steps = []step{
	{11 * point, 9 * point, 120 * point, 6, 20 * point},
	{11 * point, 9 * point, 110 * point, 4, 18 * point},
	{11 * point, 9 * point, 96 * point, 3, 15 * point},
	{1050, 850, 90 * point, 3, 14 * point},
	{10 * point, 850, 84 * point, 3, 13 * point},
	{10 * point, 850, 78 * point, 2, 11 * point},
	{950, 8 * point, 72 * point, 2, 10 * point},
	{9 * point, 8 * point, 66 * point, 2, 9 * point},
	{9 * point, 750, 60 * point, 1, 8 * point},
}

// plainer are for a sheet that takes a page more with all its drawings: those beside
// options go first, as the words say the same.
var plainer = []step{
	{10 * point, 850, -84 * point, 3, 13 * point},
	{10 * point, 850, -78 * point, 2, 11 * point},
	{950, 8 * point, -72 * point, 2, 10 * point},
	{9 * point, 8 * point, -66 * point, 2, 9 * point},
	{9 * point, 750, -60 * point, 1, 8 * point},
	{9 * point, 750, 0, 2, 8 * point},
}

// lean are for a sheet that half a page holds only with its answer lines beside the
// questions, and without drawings: those add nothing to the words.
var lean = []step{
	{11 * point, 9 * point, 0, 0, 12 * point},
	{10 * point, 850, 0, 0, 10 * point},
	{950, 8 * point, 0, 0, 8 * point},
	{9 * point, 8 * point, 0, 0, 7 * point},
	{9 * point, 750, 0, 0, 5 * point},
	{850, 750, 0, 0, 4 * point},
}

// columns sets a sheet in two columns.
func (p *pdf) columns(s Sheet, sec section) error {
	head := p.compactHead(s)
	foot := p.footHeight(sec.note)
	if high := p.halfPage() - p.ticketFoot(sec.note); heightOf(head)*2 < high {
		c, ok := roomiest(steps, func(st step) (columned, bool) {
			c := p.inColumns(s, st, head, high)
			return c, len(c.columns) <= 2 && !c.split()
		})
		if !ok {
			c, ok = roomiest(lean, func(st step) (columned, bool) {
				c := p.answersBeside(s, st, head, high)
				return c, len(c.columns) == 1
			})
		}
		if ok {
			c.balance()
			return p.ticket(sec, c.pages(p)[0])
		}
	}
	high := p.paper.height - 2*margin - foot
	tight := p.inColumns(s, plainer[len(plainer)-1], head, high)
	fits := func(st step) (columned, bool) {
		c := p.inColumns(s, st, head, high)
		return c, c.leaves() <= tight.leaves()
	}
	best, ok := roomiest(steps, fits)
	if !ok {
		best, _ = roomiest(plainer, fits)
	}
	best.balance()
	return p.print(sec, best.pages(p))
}

// roomiest is what comes of the first of the steps that fits. Where the last does not fit,
// none does.
func roomiest(steps []step, fits func(step) (columned, bool)) (columned, bool) {
	best, ok := fits(steps[len(steps)-1])
	if !ok {
		return best, false
	}
	sort.Search(len(steps)-1, func(i int) bool {
		c, ok := fits(steps[i])
		if ok {
			best = c
		}
		return ok
	})
	return best, true
}

// columned is a sheet set in columns, two on a page.
type columned struct {
	head    []row // across both columns of the first page
	height  int   // of a page's body
	blocks  []block
	columns [][]placed
	across  bool // there is one column, as wide as the page
}

func (p *pdf) inColumns(s Sheet, st step, head []row, height int) columned {
	c := columned{head: head, height: height}
	for _, it := range s.Items {
		c.blocks = append(c.blocks, p.compactItem(it, st))
	}
	c.columns = spread(c.blocks, func(column int) int {
		if column < 2 {
			return height - c.below()
		}
		return height
	})
	return c
}

// answersBeside sets a sheet in one column, its answer lines beside the questions.
func (p *pdf) answersBeside(s Sheet, st step, head []row, height int) columned {
	c := columned{head: head, height: height, across: true}
	for _, it := range s.Items {
		c.blocks = append(c.blocks, p.leanItem(it, st))
	}
	c.columns = spread(c.blocks, func(int) int { return height - c.below() })
	return c
}

// below is how far down the columns of the first page begin.
func (c *columned) below() int { return heightOf(c.head) + 10*point }

// leaves is how many pages it fills.
func (c *columned) leaves() int { return (len(c.columns) + 1) / 2 }

// split reports whether an item goes on from one column to the next.
func (c *columned) split() bool {
	for i, column := range c.columns[1:] {
		before := c.columns[i]
		if len(column) > 0 && len(before) > 0 && column[0].block == before[len(before)-1].block {
			return true
		}
	}
	return false
}

// balance makes the two columns of the last page about even.
func (c *columned) balance() {
	if c.across {
		return
	}
	from := 2 * (c.leaves() - 1)
	if len(c.columns[from]) == 0 {
		return
	}
	first := c.columns[from][0].block
	if from > 0 {
		if before := c.columns[from-1]; len(before) > 0 && before[len(before)-1].block == first {
			return // it goes on from the page before
		}
	}
	rest := c.blocks[first:]
	tallest := 0
	for _, b := range rest {
		tallest = max(tallest, heightOf(b.rows))
	}
	height := c.height
	if from == 0 {
		height -= c.below()
	}
	at := func(high int) [][]placed { return spread(rest, func(int) int { return high }) }
	few := tallest + sort.Search(max(height-tallest, 0), func(more int) bool { return len(at(tallest+more)) <= 2 })
	if few <= height {
		c.columns = append(c.columns[:from], at(few)...)
	}
}

// pages puts the columns side by side.
func (c *columned) pages(p *pdf) [][]set {
	var pages [][]set
	for i, column := range c.columns {
		if i%2 == 0 {
			pages = append(pages, nil)
		}
		last := len(pages) - 1
		top := 0
		if last == 0 {
			top = c.below()
		}
		pages[last] = append(pages[last], set{rows: column, top: top, sideways: i % 2 * (p.column() + between)})
	}
	var head []placed
	top := 0
	for _, r := range c.head {
		head = append(head, placed{row: r, top: top})
		top += r.height
	}
	pages[0] = append(pages[0], set{rows: head})
	return pages
}

// column is how wide one is.
func (p *pdf) column() int { return (p.paper.inner() - between) / 2 }

// compactHead is what stands above both columns. Facts stand beside the title, and what the
// star means beside the facts, where there is room.
func (p *pdf) compactHead(s Sheet) []row {
	rows := p.lines(margin, s.Title, p.paper.inner(), title)
	facts, star := joined(" ", s.Facts...), ""
	if s.starred() {
		star = "* " + p.words.Star
	}
	if len(rows) == 1 && p.sideBySide(rows, s.Title, title, facts, small) {
		facts = ""
	}
	rows = append(rows, p.owner(s)...)
	if facts != "" {
		rows = append(rows, p.lines(margin, facts, p.paper.inner(), small)...)
		if p.sideBySide(rows, facts, small, star, smaller) {
			star = ""
		}
	}
	if star != "" {
		rows = append(rows, p.star()...)
	}
	return rows
}

// sideBySide puts a text at the right end of the last row, which has another one, if both
// have room there.
func (p *pdf) sideBySide(rows []row, has string, f face, text string, g face) bool {
	if p.measure(f)(has)+2*columnGap+p.measure(g)(text) > p.paper.inner() {
		return false
	}
	last := rows[len(rows)-1].paint
	rows[len(rows)-1].paint = func(top int) {
		last(top)
		p.textRight(p.paper.right(), top+f.baseline()-g.baseline(), text, g)
	}
	return true
}

// compactItem is one question in the left column.
func (p *pdf) compactItem(it Item, st step) block {
	b := block{gap: st.gap}
	body, label := face{size: st.size}, face{size: st.small}
	left, width := margin, p.column()
	for _, text := range asked(it.Text) {
		b.add(p.lines(left, text, width, body)...)
	}
	p.number(&b, it, face{st.size, true}, left)
	if len(it.Options) > 0 {
		b.add(space(2 * point))
	}
	for i, option := range it.Options {
		b.add(p.hung(left, st.size*17/10, strconv.Itoa(i+1)+")", option, width, body)...)
	}
	d, figure := it.Drawing, max(st.figure, -st.figure)
	if st.figure == 0 || st.figure < 0 && len(it.Options) > 0 {
		d = nil
	}
	switch {
	case len(it.Options) > 0 && d != nil:
		b.add(p.picture(d, left, width, max(figure, readable(d))))
	case len(it.Options) == 0:
		b.add(space(3*point), p.working(d, left, width, st.squares, figure), space(2*point))
	}
	answer := p.words.Answer
	if measure := p.measure(label); it.Expects != "" && len(it.Readings) == 0 && measure(it.Expects) <= width/2 {
		answer = it.Expects // it leads to the line itself
	} else if it.Expects != "" {
		b.add(space(2 * point))
		b.add(p.lines(left, it.Expects, width, label)...)
	}
	if it.Sure != "" {
		b.add(p.lines(left, it.Sure, width, label)...)
	}
	b.add(p.asked(it, answer, body, label, left, left+width)...)
	b.filled()
	return b
}

// leanItem is one question across the page, its answer lines at the right.
func (p *pdf) leanItem(it Item, st step) block {
	body, label := face{size: st.size}, face{size: st.small}
	width := p.paper.inner() * 67 / 100
	begin, right := margin+width+columnGap, p.paper.right()
	question := p.lines(margin, strings.Join(asked(it.Text), " "), width, body)
	if len(asked(it.Text)) > 2 { // it has a list or a table
		question = nil
		for _, text := range it.Text {
			question = append(question, p.lines(margin, text, width, body)...)
		}
	}
	for i, option := range it.Options {
		question = append(question, p.hung(margin, st.size*17/10, strconv.Itoa(i+1)+")", option, width, body)...)
	}
	var answer []row
	leads := p.words.Answer
	if measure := p.measure(label); it.Expects != "" && len(it.Readings) == 0 && measure(it.Expects) <= (right-begin)*11/20 {
		leads = it.Expects
	} else if it.Expects != "" {
		answer = p.lines(begin, it.Expects, right-begin, label)
	}
	lines := p.asked(it, leads, body, label, begin, right)
	if it.Sure != "" { // where it makes the question higher by less
		at, beside := p.lines(margin, it.Sure, width, label), p.lines(begin, it.Sure, right-begin, label)
		if rest := heightOf(answer) + heightOf(lines); max(heightOf(question)+heightOf(at), rest) < max(heightOf(question), rest+heightOf(beside)) {
			question = append(question, at...)
		} else {
			answer = append(answer, beside...)
		}
	}
	answer = append(answer, lines...)
	b := block{gap: st.gap, rows: []row{{max(heightOf(question), heightOf(answer)), func(top int) {
		down(question, top)
		down(answer, top)
	}}}}
	p.number(&b, it, face{st.size, true}, margin)
	b.filled()
	return b
}

// down prints rows below one another.
func down(rows []row, top int) {
	for _, r := range rows {
		r.paint(top)
		top += r.height
	}
}

// asked runs the sentences of a question together, but for the last: that is what is asked.
func asked(text []string) []string {
	switch len(text) {
	case 0:
		return []string{""} // the number needs a line
	case 1, 2:
		return text
	}
	var first []string
	for _, line := range text[:len(text)-1] {
		if !strings.HasSuffix(line, ".") { // a list or a table
			return text
		}
		first = append(first, line)
	}
	return []string{strings.Join(first, " "), text[len(text)-1]}
}

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
