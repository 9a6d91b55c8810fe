package handout

import (
	"math"
	"unicode/utf8"

	"scratchpass/quiz/drawing"
)

// picture draws a drawing so large that its labels are as easy to read as small
// type, but never wider or higher than it may be.
func (p *pdf) picture(d *drawing.Drawing, left, width, height int) row {
	const letter = 0.62 // of the size of the type, for an average letter
	scale := pt(small.size) * letter * float64(d.Columns()) / d.Width
	scale = min(scale, pt(width)/d.Width, pt(height)/d.Height)
	const air = 10 * point
	high, low := extent(d, pt(small.size)*0.6/scale)
	return row{hundredthsOf((high-low)*scale) + 2*air, func(top int) {
		at := func(q drawing.Point) (x, y int) {
			return left + hundredthsOf(q.X*scale), top + air + hundredthsOf((high-q.Y)*scale)
		}
		p.doc.SetLineWidth(pt(heavier))
		for _, l := range d.Lines {
			p.stroke(l.Points, l.Dashed, at)
		}
		p.doc.SetFillColor(255, 255, 255)
		for _, l := range d.Labels {
			x, y := at(l.At)
			p.label(l.Text, x, y, atEdge(d, l), left, width, left+hundredthsOf(d.Width*scale))
		}
	}}
}

// stroke draws a line through points; one point makes none.
func (p *pdf) stroke(points []drawing.Point, dashed bool, at func(drawing.Point) (x, y int)) {
	if len(points) < 2 {
		return
	}
	if dashed {
		p.doc.SetDashPattern([]float64{4, 3}, 0)
	}
	x, y := at(points[0])
	p.doc.MoveTo(pt(x), pt(y))
	for _, q := range points[1:] {
		x, y := at(q)
		p.doc.LineTo(pt(x), pt(y))
	}
	p.doc.DrawPath("D")
	if dashed {
		p.doc.SetDashPattern(nil, 0)
	}
}

// label writes a label with its middle at x, or against an edge: see atEdge. It stands on
// white, so that no line runs through the letters, and stays on the page.
func (p *pdf) label(text string, x, y, edge, left, width, right int) {
	f := small
	w := p.measure(f)(text)
	if w > width { // wider than the page
		f.size = f.size * width / w
		w = p.measure(f)(text)
	}
	x -= w / 2
	switch edge {
	case -1:
		x = left
	case 1:
		x = right - w
	}
	x = max(left, min(x, left+width-w))
	p.doc.Rect(pt(x-point), pt(y-f.size*6/10), pt(w+2*point), pt(f.size*12/10), "F")
	p.text(x, y+f.size*36/100-f.baseline(), text, f)
}

// atEdge tells a label that was placed against the left edge of its drawing, -1, or
// against the right one, 1. The letters of a page are narrower than those it was placed
// with, and would leave the edge ragged.
func atEdge(d *drawing.Drawing, l drawing.Label) int {
	letter := d.Width / float64(d.Columns())
	half := letter * float64(utf8.RuneCountInString(l.Text)) / 2
	switch {
	case l.At.X-half < letter/2:
		return -1
	case l.At.X+half > d.Width-letter/2:
		return 1
	}
	return 0
}

// extent is from where to where something is drawn; a label reaches so far up and
// down from its place.
func extent(d *drawing.Drawing, label float64) (high, low float64) {
	high, low = math.Inf(-1), math.Inf(1)
	for _, l := range d.Lines {
		for _, q := range l.Points {
			high, low = max(high, q.Y), min(low, q.Y)
		}
	}
	for _, l := range d.Labels {
		high, low = max(high, l.At.Y+label), min(low, l.At.Y-label)
	}
	if high < low { // nothing in it
		return d.Height, 0
	}
	return high, low
}
