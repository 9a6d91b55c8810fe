package handout

import "strconv"

// Measures of a sheet.
const (
	gutter     = 38 * point // for an item's number and star
	itemGap    = 16 * point // between items
	columnGap  = 12 * point
	optionHang = 24 * point // for the number of an option
	working    = 46 * point // free for the working: two lines of handwriting, and more beside the question
	answerLine = 30 * point // high enough to write on
	boxPadding = 7 * point
	leastBlank = 90 * point // wide enough to write a number or a date on
	leastName  = 140 * point
)

func (p *pdf) sheet(s Sheet) error {
	blocks := []block{p.heading(s)}
	for _, it := range s.Items {
		blocks = append(blocks, p.item(it))
	}
	return p.write(section{
		mark:   joined(" ", s.Code, s.Name, s.Title),
		blocks: blocks,
		note:   p.words.Rehearsal,
		owner:  joined("  ", labelled(p.words.Code, s.Code), s.Name),
	})
}

// heading is what stands above the first item.
func (p *pdf) heading(s Sheet) block {
	var b block
	b.add(p.lines(margin, s.Title, p.paper.inner(), title)...)
	b.add(space(8 * point))
	b.add(p.owner(s)...)
	for _, fact := range s.Facts {
		b.add(p.lines(margin, fact, p.paper.inner(), small)...)
	}
	if s.starred() {
		b.add(p.star()...)
	}
	return b
}

// star says what the star means.
func (p *pdf) star() []row {
	return p.hung(margin, columnGap, "*", p.words.Star, p.paper.inner(), smaller)
}

// blank is a label with a line to write on, or with what is known already.
type blank struct {
	label, value string
	width        int // of the line
}

// owner are the blanks for whose sheet it is: in one line where the name has room.
func (p *pdf) owner(s Sheet) []row {
	name := blank{p.words.Name, s.Name, 0}
	date := blank{p.words.Date, "", leastBlank}
	code := blank{p.words.Code, s.Code, leastBlank}
	var others []blank
	if s.Form != "" { // apprentices with numbers of their own have no form
		others = append(others, blank{p.words.Form, s.Form, 0})
	}
	if s.Code != "" {
		code.width = 0
	}
	others = append(others, code, date)
	rest := p.paper.inner() - p.labelWidth(name)
	for _, b := range others {
		rest -= columnGap + p.blankWidth(b)
	}
	if need := max(leastName, p.measure(strong)(s.Name)); rest >= need {
		name.width = rest
		return []row{p.blanks(append([]blank{name}, others...)), space(5 * point)}
	}
	name.width = p.paper.inner() - p.labelWidth(name)
	lines := p.wrap(s.Name, name.width, strong)
	name.value = lines[len(lines)-1]
	var rows []row
	for _, line := range lines[:len(lines)-1] { // a very long name is still printed in full
		rows = append(rows, row{strong.leading(), func(top int) { p.text(margin+p.labelWidth(name), top, line, strong) }})
	}
	return append(rows, p.blanks([]blank{name}), p.blanks(others), space(5*point))
}

func (p *pdf) labelWidth(b blank) int { return p.measure(small)(b.label) + 5*point }

func (p *pdf) blankWidth(b blank) int {
	return p.labelWidth(b) + max(b.width, p.measure(strong)(b.value)+6*point)
}

func (p *pdf) blanks(all []blank) row {
	const high = 24 * point
	return row{high, func(top int) {
		x := margin
		top += high - strong.leading()
		lower := strong.baseline() - small.baseline() // both kinds of type stand on one line
		for _, b := range all {
			p.text(x, top+lower, b.label, small)
			p.text(x+p.labelWidth(b)+3*point, top, b.value, strong)
			end := x + p.blankWidth(b)
			p.line(x+p.labelWidth(b), top+strong.leading(), end, top+strong.leading())
			x = end + columnGap
		}
	}}
}

// item is one question with its box.
func (p *pdf) item(it Item) block {
	b := block{gap: itemGap}
	left, right := margin+gutter, p.paper.right()
	width := right - left
	text := it.Text
	if len(text) == 0 {
		text = []string{""} // the number needs a line
	}
	var question []row
	narrow := width - p.measure(small)(it.Points)
	if it.Points != "" {
		narrow -= columnGap
	}
	for _, line := range text {
		question = append(question, p.lines(left, line, narrow, regular)...)
	}
	first := question[0].paint
	question[0].paint = func(top int) {
		p.text(margin, top, numbered(it.Number, it.Caution), strong)
		p.textRight(right, top+regular.baseline()-small.baseline(), it.Points, small)
		first(top)
	}
	b.add(question...)
	if len(it.Options) > 0 {
		b.add(space(3 * point))
	}
	for i, option := range it.Options {
		b.add(p.hung(left, optionHang, strconv.Itoa(i+1)+")", option, width, regular)...)
		b.add(space(2 * point))
	}
	if it.Drawing != nil && len(it.Options) > 0 { // options want no working; with working it stands beside that
		b.add(p.picture(it.Drawing, left, width, p.paper.height/4))
	}
	if it.Expects != "" {
		b.add(space(3 * point))
		b.add(p.lines(left, it.Expects, width, small)...)
	}
	b.add(space(4 * point))
	b.add(p.strips(left, right, p.box(it, left+boxPadding, right-boxPadding))...)
	return b
}

// numbered is an item's number, with a star where a mistake can hurt someone.
func numbered(n int, caution bool) string {
	if caution {
		return strconv.Itoa(n) + " *"
	}
	return strconv.Itoa(n)
}

// box holds the working, where there is one, and a blank for each thing asked.
func (p *pdf) box(it Item, left, right int) []row {
	var rows []row
	if len(it.Options) == 0 {
		free := space(working)
		if it.Drawing != nil { // beside the working: it is looked at while writing, and saves half a page
			part := (right - left) * 55 / 100
			if it.Drawing.Columns() > 48 { // a wide one
				part = (right - left) * 65 / 100
			}
			picture := p.picture(it.Drawing, right-part, part, p.paper.height/5)
			free = row{max(working, picture.height), picture.paint}
		}
		rows = append(rows, free)
	}
	unit := p.measure(regular)(it.Unit)
	if it.Unit != "" {
		unit += 5 * point
	}
	asked := func(begin int) row {
		return row{answerLine, func(top int) {
			top += answerLine - 9*point - regular.leading()
			p.line(begin, top+regular.leading(), right-unit, top+regular.leading())
			p.textRight(right, top, it.Unit, regular)
		}}
	}
	if len(it.Readings) == 0 {
		r := asked(left + p.measure(small)(p.words.Answer) + 6*point)
		line := r.paint
		r.paint = func(top int) {
			p.text(left, top+answerLine-9*point-small.leading(), p.words.Answer, small)
			line(top)
		}
		return append(rows, r)
	}
	// The blanks of all readings begin below one another.
	most := (right - left) * 6 / 10
	widest := 0
	for i, label := range it.Readings {
		widest = max(widest, p.measure(regular)(reading(i, label)))
	}
	widest = min(widest, most)
	for i, label := range it.Readings {
		lines := p.lines(left, reading(i, label), widest, regular)
		last := lines[len(lines)-1]
		r := asked(left + widest + 6*point)
		line := r.paint
		r.paint = func(top int) {
			last.paint(top + answerLine - 9*point - regular.leading())
			line(top)
		}
		if len(lines) > 1 {
			rows = append(rows, space(5*point))
		}
		rows = append(append(rows, lines[:len(lines)-1]...), r)
	}
	return rows
}

// reading is the label of a reading with its number.
func reading(i int, label string) string { return strconv.Itoa(i+1) + ") " + label }
