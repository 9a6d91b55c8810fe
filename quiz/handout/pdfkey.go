package handout

// Measures of a key.
const (
	keyGutter  = 30 * point
	keyItemGap = 11 * point
	cellGap    = 3 * point
	cellPad    = 3 * point
)

func (p *pdf) key(k Key) error {
	var head block
	head.add(p.lines(margin, p.words.Key, p.paper.inner(), title)...)
	head.add(p.lines(margin, k.Title, p.paper.inner(), strong)...)
	head.add(p.beside(margin, p.paper.inner(), regular, labelled(p.words.Name, k.Name), labelled(p.words.Form, k.Form), labelled(p.words.Code, k.Code))...)
	if k.starred() {
		head.add(p.star()...)
	}
	blocks := []block{head}
	for _, it := range k.Items {
		blocks = append(blocks, p.keyItem(it))
	}
	return p.write(section{
		mark:   joined(" ", p.words.Key, k.Code, k.Name, k.Form),
		blocks: blocks,
		owner:  joined("  ", p.words.Key, labelled(p.words.Form, k.Form), labelled(p.words.Code, k.Code), k.Name),
	})
}

// keyItem is what marks one item.
func (p *pdf) keyItem(it KeyItem) block {
	b := block{gap: keyItemGap}
	left, right := margin+keyGutter, p.paper.right()
	width := right - left
	head := p.lines(left, it.Title, width-columnGap-p.measure(small)(it.Points), small)
	first := head[0].paint
	head[0].paint = func(top int) {
		p.text(margin, top, numbered(it.Number, it.Caution), smaller)
		p.textRight(right, top, it.Points, small)
		first(top)
	}
	b.add(head...)
	limits := labelled(p.words.Accepted, it.Limits)
	answers := p.wrap(it.Answer, width, strong)
	// The limits stand behind a short answer and below a long one.
	behind := p.measure(strong)(answers[0]) + 2*columnGap
	if len(answers) == 1 && behind+p.measure(small)(limits) <= width {
		b.add(row{strong.leading(), func(top int) {
			p.text(left, top, answers[0], strong)
			p.text(left+behind, top+strong.leading()-small.leading()-point, limits, small)
		}})
	} else {
		b.add(p.lines(left, it.Answer, width, strong)...)
		if limits != "" {
			b.add(p.lines(left, limits, width, small)...)
		}
	}
	if path := labelled(p.words.Path, it.Path); path != "" {
		b.add(p.lines(left, path, width, small)...)
	}
	if len(it.Seen) > 0 {
		b.add(p.strip(it.Seen, left, right)...)
	}
	if it.Carried != "" {
		b.add(p.lines(left, it.Carried, width, smaller)...)
	}
	return b
}

// strip is the run of wrong numbers, each in a cell with the error that gives it.
func (p *pdf) strip(seen []Seen, left, right int) []row {
	const high = 17 * point // of a cell, with the gap below it
	type cell struct {
		x, width int
		value    string
		name     string
	}
	var rows []row
	var line []cell
	x := left + p.measure(small)(withColon(p.words.Seen)) + 2*cellGap
	label := withColon(p.words.Seen)
	flush := func() {
		cells, begin := line, label
		line, label, x = nil, "", left
		if begin == "" && cells == nil {
			return
		}
		rows = append(rows, row{high, func(top int) {
			p.text(left, top+2*point, begin, small)
			for _, c := range cells {
				p.frame(c.x, top+point, c.width, high-3*point)
				p.text(c.x+cellPad, top+2*point, c.value, smaller)
				p.text(c.x+cellPad+p.measure(smaller)(c.value), top+2*point, c.name, small)
			}
		}})
	}
	for _, s := range seen {
		name := " = " + s.Name
		width := p.measure(smaller)(s.Value) + p.measure(small)(name) + 2*cellPad
		if width > right-left { // no cell holds it: lines of text do
			flush()
			rows = append(rows, p.lines(left, s.Value+name, right-left, small)...)
			continue
		}
		if x+width > right {
			flush()
		}
		line = append(line, cell{x, width, s.Value, name})
		x += width + cellGap
	}
	flush()
	return rows
}
