package handout

// Lengths on a page are whole numbers of hundredths of a point, so that a line
// breaks at the same word, and a page at the same item, on every processor.
const point = 100

// row is the least that a page holds: a line of text, a picture, a strip of a box.
type row struct {
	height int
	paint  func(top int)
}

// block is a run of rows that belong together: one item.
type block struct {
	rows []row
	gap  int // above it, unless it begins a page
}

// add appends rows.
func (b *block) add(rows ...row) { b.rows = append(b.rows, rows...) }

func (b *block) height() int {
	sum := 0
	for _, r := range b.rows {
		sum += r.height
	}
	return sum
}

// placed is a row with its place on a page; the top of the page's body is 0.
type placed struct {
	row
	top   int
	block int // which block it is of
}

// paginate spreads blocks over pages whose body is so high; again is how much of each
// page but the first is taken already. A block begins a new page rather than be split;
// only one that no page can hold flows from page to page.
func paginate(blocks []block, height, again int) [][]placed {
	pages := [][]placed{nil}
	top, last := 0, 0
	turn := func() {
		pages = append(pages, nil)
		top, last = again, last+1
	}
	for i := range blocks {
		b := &blocks[i]
		tall := b.height()
		if len(pages[last]) > 0 {
			if tall <= height-again && top+b.gap+tall > height {
				turn()
			} else {
				top += b.gap
			}
		}
		for _, r := range b.rows {
			if len(pages[last]) > 0 && top+r.height > height {
				turn()
			}
			pages[last] = append(pages[last], placed{r, top, i})
			top += r.height
		}
	}
	return pages
}
