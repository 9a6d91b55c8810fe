package handout

import (
	"strconv"
	"strings"
)

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
