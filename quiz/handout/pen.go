package handout

import "math"

// face is a size and a weight of type.
type face struct {
	size int
	bold bool
}

var (
	title   = face{14 * point, true}
	strong  = face{11 * point, true}
	regular = face{11 * point, false}
	small   = face{9 * point, false}
	smaller = face{9 * point, true} // small and bold
)

// leading is from one line of text to the next: 11 points stand on 15.
func (f face) leading() int { return f.size * 15 / 11 }

// baseline is how far below the top of its line a text stands.
func (f face) baseline() int { return f.size * 21 / 20 }

func pt(x int) float64 { return float64(x) / point }

func hundredthsOf(x float64) int { return int(math.Round(x * point)) }

// use takes a face for what is measured or printed next.
func (p *pdf) use(f face) {
	style := ""
	if f.bold {
		style = "B"
	}
	p.doc.SetFont(fontFamily, style, pt(f.size))
}

// measure returns what tells the width of a text in a face.
func (p *pdf) measure(f face) func(string) int {
	of := p.letters
	if f.bold {
		of = p.boldLetters
	}
	return func(s string) int {
		sum := 0
		for _, r := range s {
			w, known := of[r]
			if !known {
				p.use(f)
				w = p.doc.GetStringSymbolWidth(string(r))
				of[r] = w
			}
			sum += w
		}
		return sum * f.size / 1000
	}
}

// widths are those of letters in thousandths of their size. A letter is measured once: a
// sheet is laid out several times until it fits.
type widths map[rune]int

func (p *pdf) wrap(text string, width int, f face) []string {
	return wrapAll(text, width, p.measure(f))
}

// shortened cuts a text that has to stand on one line. It is given in full elsewhere.
func (p *pdf) shortened(text string, width int, f face) string {
	measure := p.measure(f)
	if measure(text) <= width {
		return text
	}
	return text[:fitting(text, width-measure("…"), measure)] + "…"
}

// text prints one line; top is the top of the line.
func (p *pdf) text(x, top int, s string, f face) {
	if s == "" {
		return
	}
	p.use(f)
	p.doc.Text(pt(x+p.shift), pt(top+f.baseline()), s)
}

func (p *pdf) textRight(right, top int, s string, f face) {
	p.text(right-p.measure(f)(s), top, s, f)
}

// hairline and heavier are widths of lines that a poor copier still shows.
const (
	hairline = 60
	heavier  = 90
)

func (p *pdf) line(x0, y0, x1, y1 int) {
	p.doc.SetLineWidth(pt(hairline))
	p.doc.Line(pt(x0+p.shift), pt(y0), pt(x1+p.shift), pt(y1))
}

func (p *pdf) frame(x, top, width, height int) {
	p.doc.SetLineWidth(pt(hairline))
	p.doc.Rect(pt(x+p.shift), pt(top), pt(width), pt(height), "D")
}

// lines returns a row for each line of a text.
func (p *pdf) lines(x int, text string, width int, f face) []row {
	var rows []row
	for _, line := range p.wrap(text, width, f) {
		rows = append(rows, row{f.leading(), func(top int) { p.text(x, top, line, f) }})
	}
	return rows
}

// hung returns rows of a text whose first line has a mark at its left.
func (p *pdf) hung(x, indent int, mark, text string, width int, f face) []row {
	rows := p.lines(x+indent, text, width-indent, f)
	rest := rows[0].paint
	rows[0].paint = func(top int) { p.text(x, top, mark, f); rest(top) }
	return rows
}

// beside returns rows with texts side by side, as many as have room.
func (p *pdf) beside(x, width int, f face, texts ...string) []row {
	const gap = 20 * point
	var rows []row
	at := 0 // where the next text would stand in the last row
	for _, text := range texts {
		if text == "" {
			continue
		}
		wide := p.measure(f)(text)
		if at == 0 || at+wide > width {
			rows = append(rows, p.lines(x, text, width, f)...)
		} else {
			before, place := rows[len(rows)-1].paint, x+at
			rows[len(rows)-1].paint = func(top int) { before(top); p.text(place, top, text, f) }
			wide += at
		}
		at = wide + gap
	}
	return rows
}

// space is a row with nothing in it.
func space(height int) row { return row{height, func(int) {}} }

// strips frames rows as one box. Each row draws its own part of the frame, so that a
// box that flows over a page stays open there.
func (p *pdf) strips(left, right int, rows []row) []row {
	framed := make([]row, len(rows))
	for i, r := range rows {
		framed[i] = row{r.height, func(top int) {
			bottom := top + r.height
			p.line(left, top, left, bottom)
			p.line(right, top, right, bottom)
			if i == 0 {
				p.line(left, top, right, top)
			}
			if i == len(rows)-1 {
				p.line(left, bottom, right, bottom)
			}
			r.paint(top)
		}}
	}
	return framed
}
