package handout

// Lengths on a page are whole numbers of hundredths of a point, so that a line
// breaks at the same word, and a page at the same item, on every processor.
const point = 100

// row is the least that a page holds: a line of text, a picture, a strip of a box.
type row struct {
	height int
	paint  func(top int)
}

// filled gives a block the height that what stands in its margin needs.
func (b *block) filled() {
	if short := b.least - heightOf(b.rows); short > 0 {
		b.add(space(short))
	}
}

// heightOf is how high rows are together.
func heightOf(rows []row) int {
	sum := 0
	for _, r := range rows {
		sum += r.height
	}
	return sum
}

// block is a run of rows that belong together: one item.
type block struct {
	rows  []row
	least int   // how high it is at the least, see filled
	gap   int   // above it, unless it begins a page
	again []row // above it where it begins a page or goes on on one: the names of a table's columns
}

// add appends rows.
func (b *block) add(rows ...row) { b.rows = append(b.rows, rows...) }

// placed is a row with its place on a page; the top of the page's body is 0.
type placed struct {
	row
	top   int
	block int // which block it is of
}

// paginate spreads blocks over pages whose body is so high. A block begins a new page
// rather than be split; only one that no page can hold flows from page to page.
func paginate(blocks []block, height int) [][]placed {
	return spread(blocks, func(int) int { return height })
}

// spread is paginate for pages, or columns, that differ in height: high tells the one of
// each, from 0.
func spread(blocks []block, high func(page int) int) [][]placed {
	height := high(0)
	pages := [][]placed{nil}
	top, last := 0, 0
	place := func(i int, rows ...row) {
		for _, r := range rows {
			pages[last] = append(pages[last], placed{r, top, i})
			top += r.height
		}
	}
	// turn begins a page for what is so high.
	turn := func(i, tall int) {
		pages = append(pages, nil)
		top, last = 0, last+1
		height = high(last)
		if again := blocks[i].again; heightOf(again)+tall <= height {
			place(i, again...)
		}
	}
	for i, b := range blocks {
		if len(b.rows) == 0 {
			continue // it begins no page
		}
		if tall := heightOf(b.rows); len(pages[last]) > 0 {
			if top+b.gap+tall > height && heightOf(b.again)+tall <= high(last+1) {
				turn(i, tall)
			} else {
				top += b.gap
			}
		}
		for _, r := range b.rows {
			if len(pages[last]) > 0 && top+r.height > height {
				turn(i, r.height)
			}
			place(i, r)
		}
	}
	return pages
}

// flow gathers blocks of running text, where a heading is held until what it heads is put.
type flow struct {
	blocks []block
	held   block
}

// hold takes rows that stay with what comes next.
func (f *flow) hold(gap int, rows ...row) {
	if len(f.held.rows) == 0 {
		f.held.gap = max(f.held.gap, gap)
	} else if gap > 0 {
		f.held.add(space(gap))
	}
	f.held.add(rows...)
}

// put takes rows that stay together, with what is held.
func (f *flow) put(gap int, rows, again []row) {
	f.hold(gap, rows...)
	f.held.again = again
	f.blocks, f.held = append(f.blocks, f.held), block{}
}

// all returns the blocks, a heading of nothing at their end too.
func (f *flow) all() []block {
	if len(f.held.rows) > 0 {
		f.put(0, nil, nil)
	}
	return f.blocks
}

// runs parts rows that are higher than most, so that a page never begins or ends with
// a lone one of them.
func runs(rows []row, most int) [][]row {
	const few = 3 // stay together at either end
	if len(rows) == 0 {
		return nil
	}
	if heightOf(rows) <= most || len(rows) <= 2*few {
		return [][]row{rows}
	}
	end := len(rows) - few
	all := [][]row{rows[:few]}
	for i := few; i < end; i++ {
		all = append(all, rows[i:i+1])
	}
	return append(all, rows[end:])
}
