package handout

// Measures of a key.
const (
	keyGutter = 30 * point
	cellGap   = 3 * point
	cellPad   = 3 * point
)

// keyStep is how closely a key is set: the type of its answers and of all else, and the gap
// above an item.
type keyStep struct {
	answer, text face
	gap          int
}

// keySteps are from roomy to tight. A key is set as roomily as the fewest pages that hold it
// allow; one that half a page holds takes no more.
var keySteps = []keyStep{
	{face{11 * point, true}, face{size: 9 * point}, 11 * point},
	{face{11 * point, true}, face{size: 9 * point}, 9 * point},
	{face{10 * point, true}, face{size: 850}, 8 * point},
	{face{10 * point, true}, face{size: 850}, 6 * point},
	{face{950, true}, face{size: 8 * point}, 5 * point},
	{face{9 * point, true}, face{size: 750}, 4 * point},
}

func (s keyStep) bold() face { return face{s.text.size, true} }

func (p *pdf) key(k Key) error {
	sec := section{
		mark:  joined(" ", p.words.Key, k.Code, k.Name, k.Form),
		owner: joined("  ", p.words.Key, labelled(p.words.Form, k.Form), labelled(p.words.Code, k.Code), k.Name),
	}
	half, full := p.halfPage()-p.ticketFoot(""), p.paper.height-2*margin-p.footHeight("")
	tight := p.keyBlocks(k, keySteps[len(keySteps)-1])
	high, fewest := full, len(paginate(tight, full))
	if len(paginate(tight, half)) == 1 {
		high, fewest = half, 1
	}
	for _, step := range keySteps {
		sec.blocks = p.keyBlocks(k, step)
		pages := paginate(sec.blocks, high)
		switch {
		case len(pages) > fewest:
		case high == half:
			return p.ticket(sec, []set{{rows: pages[0]}})
		default:
			return p.write(sec)
		}
	}
	return p.write(sec)
}

// keyBlocks lays a key out: its head, and what marks each item.
func (p *pdf) keyBlocks(k Key, step keyStep) []block {
	body := face{size: step.answer.size}
	var head block
	head.add(p.lines(margin, p.words.Key, p.paper.inner(), title)...)
	head.add(p.lines(margin, k.Title, p.paper.inner(), step.answer)...)
	head.add(p.beside(margin, p.paper.inner(), body, labelled(p.words.Name, k.Name), labelled(p.words.Form, k.Form), labelled(p.words.Code, k.Code))...)
	if k.starred() {
		head.add(p.star()...)
	}
	blocks := []block{head}
	for _, it := range k.Items {
		blocks = append(blocks, p.keyItem(it, step))
	}
	return blocks
}

// keyItem is what marks one item.
func (p *pdf) keyItem(it KeyItem, step keyStep) block {
	left, right := margin+keyGutter, p.paper.right()
	width := right - left
	b := block{gap: step.gap}
	b.add(p.keyHead(it, step, left, right)...)
	first := b.rows[0].paint
	b.rows[0].paint = func(top int) {
		p.text(margin, top+step.answer.baseline()-step.bold().baseline(), numbered(it.Number, it.Caution), step.bold())
		first(top)
	}
	if path := labelled(p.words.Path, it.Path); path != "" {
		b.add(p.lines(left, path, width, step.text)...)
	}
	if len(it.Seen) > 0 {
		b.add(p.strip(it.Seen, left, right, step)...)
	}
	if it.Carried != "" {
		b.add(p.lines(left, it.Carried, width, step.bold())...)
	}
	return b
}

// keyHead is the answer with what else is right behind it, and at the right what was asked
// and its points; a long answer stands below that.
func (p *pdf) keyHead(it KeyItem, step keyStep, left, right int) []row {
	width := right - left
	answer, text := p.measure(step.answer), p.measure(step.text)
	limits, asked := labelled(p.words.Accepted, it.Limits), joined(", ", it.Title, it.Points)
	low := step.answer.baseline() - step.text.baseline() // small type stands on the line of the large
	answers := p.wrap(it.Answer, width, step.answer)
	behind := answer(answers[0]) + columnGap
	short := len(answers) == 1 && behind+text(limits) <= width
	one := row{step.answer.leading(), func(top int) {
		p.text(left, top, answers[0], step.answer)
		p.text(left+behind, top+low, limits, step.text)
	}}
	if short && behind+text(limits)+columnGap+text(asked) <= width {
		return []row{{one.height, func(top int) {
			one.paint(top)
			p.textRight(right, top+low, asked, step.text)
		}}}
	}
	rows := p.lines(left, it.Title, width-columnGap-text(it.Points), step.text)
	first := rows[0]
	rows[0] = row{step.answer.leading(), func(top int) {
		first.paint(top + low)
		p.textRight(right, top+low, it.Points, step.text)
	}}
	if short {
		return append(rows, one)
	}
	rows = append(rows, p.lines(left, it.Answer, width, step.answer)...)
	if limits != "" {
		rows = append(rows, p.lines(left, limits, width, step.text)...)
	}
	return rows
}

// strip is the run of wrong numbers, each in a cell with the error that gives it.
func (p *pdf) strip(seen []Seen, left, right int, step keyStep) []row {
	const air = 2 * point // in a cell above its text, and between cells
	high := step.text.leading() + 5*point
	text, bold := p.measure(step.text), p.measure(step.bold())
	type cell struct {
		x, width int
		value    string
		name     string
	}
	var rows []row
	var line []cell
	label := withColon(p.words.Seen)
	x := left + text(label) + 2*cellGap
	flush := func() {
		cells, begin := line, label
		line, label, x = nil, "", left
		if begin == "" && cells == nil {
			return
		}
		rows = append(rows, row{high, func(top int) {
			p.text(left, top+air, begin, step.text)
			for _, c := range cells {
				p.frame(c.x, top+air/2, c.width, high-3*air/2)
				p.text(c.x+cellPad, top+air, c.value, step.bold())
				p.text(c.x+cellPad+bold(c.value), top+air, c.name, step.text)
			}
		}})
	}
	for _, s := range seen {
		name := " = " + s.Name
		width := bold(s.Value) + text(name) + 2*cellPad
		if width > right-left { // no cell holds it: lines of text do
			flush()
			rows = append(rows, p.lines(left, s.Value+name, right-left, step.text)...)
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
