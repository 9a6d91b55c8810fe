package drawing

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"scratchpass/content"
)

// letterWidth is how wide a letter is, in sizes of the type, taken generously.
const letterWidth = 0.62

// Columns is how many letters stand side by side across the drawing. The labels
// were placed for letters of that width.
func (d Drawing) Columns() int {
	if d.Most > 0 {
		return d.Most
	}
	return 64
}

// SVG draws in black lines that keep their sharpness at every size. The twin in
// words goes with it, for those who hear the page. Equal drawings give equal bytes.
func (d Drawing) SVG() string {
	size := d.Width / float64(d.Columns()) / letterWidth
	escaped := func(s string) string { return html.EscapeString(content.Printable(s)) }
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" role="img" aria-label="%s">`,
		hundredths(d.Width), hundredths(d.Height), escaped(d.Twin))
	fmt.Fprintf(&b, "<title>%s</title><desc>%s</desc>\n", escaped(d.Title), escaped(d.Twin))
	fmt.Fprintf(&b, `<g fill="none" stroke="black" stroke-width="%s">`+"\n", hundredths(size/10))
	for _, l := range d.Lines {
		if len(l.Points) < 2 {
			continue
		}
		b.WriteString(`<polyline points="`)
		for i, p := range l.Points {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(hundredths(p.X) + "," + hundredths(d.Height-p.Y))
		}
		b.WriteByte('"')
		if l.Dashed {
			fmt.Fprintf(&b, ` stroke-dasharray="%s %s"`, hundredths(size/2), hundredths(size/3))
		}
		b.WriteString("/>\n")
	}
	b.WriteString("</g>\n")
	fmt.Fprintf(&b, `<g font-family="sans-serif" font-size="%s" text-anchor="middle">`+"\n", hundredths(size))
	for _, l := range d.Labels {
		// A label stands on white, so that no line runs through its letters.
		// Each product is rounded by itself: some processors would fuse it with a sum.
		width := float64(size * letterWidth * float64(utf8.RuneCountInString(l.Text)))
		above, below := float64(size*0.6), float64(size*0.36)
		x, y := l.At.X, d.Height-l.At.Y
		fmt.Fprintf(&b, `<rect x="%s" y="%s" width="%s" height="%s" fill="white"/><text x="%s" y="%s">%s</text>`+"\n",
			hundredths(x-width/2), hundredths(y-above), hundredths(width), hundredths(size*1.2),
			hundredths(x), hundredths(y+below), escaped(l.Text))
	}
	b.WriteString("</g>\n</svg>")
	return b.String()
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
