package handout

import (
	"strconv"

	"scratchpass/quiz/drawing"
)

// Measures of a sheet.
const (
	marginal   = 32 * point // for an item's number and points, in the margin
	marginGap  = 7 * point
	mostFigure = 128 * point // 45 mm
	itemGap    = 18 * point  // between items
	columnGap  = 12 * point
	optionHang = 24 * point // for the number of an option
	leastBlank = 90 * point // wide enough to write a number or a date on
	leastName  = 140 * point
)

func (p *pdf) sheet(s Sheet) error {
	sec := section{
		mark:  joined(" ", s.Code, s.Name, s.Title),
		note:  p.words.Rehearsal,
		owner: joined("   ", labelled(p.words.Code, s.Code), s.Name, s.Title),
	}
	if p.compact {
		return p.columns(s, sec)
	}
	return p.inOne(s, sec)
}

// inOne sets a sheet in one column.
func (p *pdf) inOne(s Sheet, sec section) error {
	sec.blocks = []block{p.heading(s)}
	for _, it := range s.Items {
		sec.blocks = append(sec.blocks, p.item(it))
	}
	return p.write(sec)
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
	left, right := margin, p.paper.right()
	width := right - left
	text := it.Text
	if len(text) == 0 {
		text = []string{""} // the number needs a line
	}
	for _, line := range text {
		b.add(p.lines(left, line, width, regular)...)
	}
	p.number(&b, it, strong, left)
	if len(it.Options) > 0 {
		b.add(space(3 * point))
	}
	for i, option := range it.Options {
		b.add(p.hung(left, optionHang, strconv.Itoa(i+1)+")", option, width, regular)...)
		b.add(space(2 * point))
	}
	if it.Drawing != nil && len(it.Options) > 0 { // options want no working; with working it stands beside that
		b.add(p.picture(it.Drawing, left, width, mostFigure))
	}
	if told := it.told(); told != "" {
		b.add(space(3 * point))
		b.add(p.lines(left, told, width, small)...)
	}
	b.add(space(4 * point))
	if len(it.Options) == 0 {
		b.add(p.working(it.Drawing, left, width, 5, mostFigure), space(2*point))
	}
	b.add(p.asked(it, p.words.Answer, regular, small, left, right)...)
	b.filled()
	return b
}

// number prints an item's number, with its points below it, in the margin beside its
// first line.
func (p *pdf) number(b *block, it Item, f face, left int) {
	const tiny = 7 * point
	worth := face{size: tiny}
	points := p.wrap(it.Points, marginal, worth)
	first := b.rows[0].paint
	edge := left - marginGap
	b.rows[0].paint = func(top int) {
		p.textRight(edge, top, numbered(it.Number, it.Caution), f)
		for i, line := range points {
			p.textRight(edge, top+f.leading()+i*(tiny+point), line, worth)
		}
		first(top)
	}
	b.least = f.leading() + len(points)*(tiny+point)
}

// square is the side of the squares for the working.
const square = 1417 // 5 mm

// working is a field of squares to work in, so many high, and the drawing at its right; a
// drawing that leaves too little room beside it stands above it.
func (p *pdf) working(d *drawing.Drawing, left, width, squares, figure int) row {
	if d == nil {
		n := width / square
		return row{squares * square, func(top int) { p.squares(left, top, n, squares) }}
	}
	scale, _ := scaled(d, width, figure)
	wide := hundredthsOf(d.Width * scale)
	if room := width - wide - columnGap; room >= leastBlank {
		picture := p.picture(d, left+width-wide, wide, figure)
		squares = max(squares, (picture.height-6*point)/square)
		n := room / square
		return row{max(squares*square, picture.height), func(top int) {
			p.squares(left, top, n, squares)
			picture.paint(top)
		}}
	}
	picture := p.picture(d, left, width, figure)
	n := width / square
	return row{picture.height + squares*square, func(top int) {
		picture.paint(top)
		p.squares(left, top+picture.height, n, squares)
	}}
}

// squares prints a field of squares, so light that pencil stands out from it.
func (p *pdf) squares(left, top, across, down int) {
	if across <= 0 || down <= 0 {
		return
	}
	p.doc.SetDrawColor(190, 190, 190)
	p.doc.SetLineWidth(0.3)
	x0, x1 := pt(left+p.shift), pt(left+p.shift+across*square)
	for i := range down + 1 {
		y := pt(top + i*square)
		p.doc.Line(x0, y, x1, y)
	}
	y0, y1 := pt(top), pt(top+down*square)
	for i := range across + 1 {
		x := pt(left + p.shift + i*square)
		p.doc.Line(x, y0, x, y1)
	}
	p.doc.SetDrawColor(0, 0, 0)
}

// numbered is an item's number, with a star where a mistake can hurt someone.
func numbered(n int, caution bool) string {
	if caution {
		return strconv.Itoa(n) + " *"
	}
	return strconv.Itoa(n)
}

// asked are the lines to write on: one for the answer, or one for each reading.
func (p *pdf) asked(it Item, answer string, f, label face, left, right int) []row {
	unit := p.measure(f)(it.Unit)
	if it.Unit != "" {
		unit += 5 * point
	}
	high := f.size * 2 // room to write
	line := func(begin int) row {
		return row{high, func(top int) {
			top += high - 4*point - f.leading()
			p.line(begin, top+f.leading(), right-unit, top+f.leading())
			p.textRight(right, top, it.Unit, f)
		}}
	}
	if len(it.Readings) == 0 {
		r := line(left + p.measure(label)(answer) + 6*point)
		rest := r.paint
		r.paint = func(top int) {
			p.text(left, top+high-4*point-label.leading(), answer, label)
			rest(top)
		}
		return []row{r}
	}
	// The blanks of all readings begin below one another.
	most := (right - left) * 6 / 10
	widest := 0
	for i, text := range it.Readings {
		widest = max(widest, p.measure(f)(reading(i, text)))
	}
	widest = min(widest, most)
	var rows []row
	for i, text := range it.Readings {
		lines := p.lines(left, reading(i, text), widest, f)
		last := lines[len(lines)-1]
		r := line(left + widest + 6*point)
		rest := r.paint
		r.paint = func(top int) {
			last.paint(top + high - 4*point - f.leading())
			rest(top)
		}
		whole := r.paint
		if above := high - 4*point - f.leading(); len(lines) > 1 {
			rows = append(append(rows, space(above)), lines[:len(lines)-1]...)
			r = row{high - above, func(top int) { whole(top - above) }}
		}
		rows = append(rows, r)
	}
	return rows
}

// reading is the label of a reading with its number.
func reading(i int, label string) string { return strconv.Itoa(i+1) + ") " + label }
