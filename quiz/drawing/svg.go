package drawing

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"

	"scratchpass/content"
)

// letterWidth is how wide a letter is, in sizes of the type, taken generously.
const letterWidth = 0.62

// whiteWidth is the same for the white that a label stands on: not more than it needs.
const whiteWidth = 0.56

// SVG draws in lines that keep their sharpness at every size. The twin in words goes with
// it, for those who hear the page. Parts have a class of their own, so that a page can
// colour them; without one everything is black and grey. Equal drawings give equal bytes.
func (d Drawing) SVG() string {
	size := d.letter() / letterWidth
	escaped := func(s string) string { return html.EscapeString(content.Printable(s)) }
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" role="img" aria-label="%s">`,
		hundredths(d.Width), hundredths(d.Height), escaped(d.Twin))
	fmt.Fprintf(&b, "<title>%s</title><desc>%s</desc>\n", escaped(d.Title), escaped(d.Twin))
	fmt.Fprintf(&b, `<g fill="none" stroke="black" stroke-width="%s" stroke-linejoin="round">`+"\n", hundredths(size/12))
	for _, s := range d.Shapes {
		if s.Moves {
			b.WriteString(moves)
		}
		d.shape(&b, s, size)
		if s.Moves {
			b.WriteString("</g>\n")
		}
	}
	b.WriteString("</g>\n")
	fmt.Fprintf(&b, `<g font-family="sans-serif" font-size="%s">`+"\n", hundredths(size))
	for _, l := range d.Labels {
		// A label stands on white, so that no line runs through its letters.
		if l.Moves {
			b.WriteString(moves)
		}
		// Each product is rounded by itself: some processors would fuse it with a sum.
		width := float64(size * whiteWidth * float64(letters(l.Text)))
		above, below := float64(size*0.6), float64(size*0.36)
		x, y := l.At.X, d.Height-l.At.Y
		anchor, left := "middle", x-width/2
		switch l.Align {
		case Left:
			anchor, left = "start", x
		case Right:
			anchor, left = "end", x-width
		}
		fmt.Fprintf(&b, `<rect class="paper" x="%s" y="%s" width="%s" height="%s" fill="white"/>`+
			`<text class="%s" x="%s" y="%s" text-anchor="%s">%s</text>`+"\n",
			hundredths(left), hundredths(y-above), hundredths(width), hundredths(size*1.2),
			l.Part.class(), hundredths(x), hundredths(y+below), anchor, escaped(l.Text))
		if l.Moves {
			b.WriteString("</g>\n")
		}
	}
	b.WriteString("</g>\n</svg>")
	return b.String()
}

// moves begins a group of what moves in a picture that moves: a page's script moves it.
const moves = `<g class="moves">`

// class is what a style sheet calls a part.
func (p Part) class() string {
	switch p {
	case Tool:
		return "tool"
	case Machine:
		return "machine"
	case Measure:
		return "measure"
	case Marked:
		return "marked"
	}
	return "work"
}

// shape writes one run of straight pieces.
func (d Drawing) shape(b *strings.Builder, s Shape, size float64) {
	if len(s.Points) < 2 {
		return
	}
	fmt.Fprintf(b, `<polyline class="%s"`, s.Part.class())
	switch s.Fill {
	case Clear:
		b.WriteString(` fill="white"`)
	case Tint:
		b.WriteString(` fill="#e4e4e4"`)
	case Solid:
		b.WriteString(` fill="black"`)
	}
	switch s.Pen {
	case NoEdge:
		b.WriteString(` stroke="none"`)
	case Outline:
		fmt.Fprintf(b, ` stroke-width="%s"`, hundredths(size/6))
	case Hidden:
		fmt.Fprintf(b, ` stroke-dasharray="%s %s"`, hundredths(size/2), hundredths(size/3))
	case Centre:
		fmt.Fprintf(b, ` stroke-dasharray="%s %s %s %s"`, hundredths(size*1.6), hundredths(size/3), hundredths(size/3), hundredths(size/3))
	}
	b.WriteString(` points="`)
	for i, p := range s.Points {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(hundredths(p.X) + "," + hundredths(d.Height-p.Y))
	}
	b.WriteString(`"/>` + "\n")
}

// hundredths prints a coordinate with two decimals at most: no processor's last
// bit shows in it.
func hundredths(x float64) string {
	x = math.Round(x*100) / 100
	if x == 0 {
		x = 0 // no minus in front of it
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}
