package handout

import (
	"slices"
	"sort"
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
			return c, len(c.columns) <= 2 && !c.split() && !c.overflows()
		})
		if !ok {
			c, ok = roomiest(lean, func(st step) (columned, bool) {
				c := p.answersBeside(s, st, head, high)
				return c, len(c.columns) == 1 && !c.overflows()
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
	if best.split() || best.overflows() { // one column is as wide as two
		return p.inOne(s, sec)
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

// overflows reports whether an item is higher than a column of the first page.
func (c *columned) overflows() bool {
	return slices.ContainsFunc(c.blocks, func(b block) bool { return heightOf(b.rows) > c.height-c.below() })
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
